import type { Report } from './source.ts';

/** Says what a check found. Answers the exit code: 1 when the records cannot be trusted. */
export function printReport(report: Report): 0 | 1 {
  for (const { place, reason } of report.notices) console.log(`Notice: ${place}: ${reason}`);
  for (const { place, reason } of report.faults) console.error(`FAULT: ${place}: ${reason}`);
  console.log(
    `${report.chains} chains with ${report.links} entries, ${report.anchors} anchors, ${report.signOffs} signatures, ${report.files} files: ${report.faults.length} faults`,
  );
  if (report.keys.length > 0) console.log(`Shop keys, oldest first: ${report.keys.join(', ')}`);
  return report.faults.length === 0 ? 0 : 1;
}
