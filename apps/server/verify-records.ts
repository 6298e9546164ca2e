import { verifyRecords } from './src/platform/command/verify-records.ts';
import { startEmbeddedPostgres } from './src/platform/embedded-postgres/start.ts';
import { readSettings } from './src/settings.ts';

// `npm run verify-records`: recomputes every record chain of DATABASE_URL, or of the embedded database while the server is stopped.
const settings = readSettings(process.env);
const embedded = settings.ownerUrl ? undefined : await startEmbeddedPostgres(settings.dataFolder);
try {
  const report = await verifyRecords(settings.ownerUrl ?? embedded?.url ?? '');
  for (const fault of report.faults) console.error(`${fault.subject}, entry ${fault.sequence}: ${fault.reason}`);
  console.log(`${report.chains} chains with ${report.links} entries, ${report.faults.length} faults`);
  process.exitCode = report.faults.length === 0 ? 0 : 1;
} finally {
  await embedded?.stop();
}
