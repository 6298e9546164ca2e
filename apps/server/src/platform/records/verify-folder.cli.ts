import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { exportFiles, type Manifest } from './folder.ts';
import { printReport } from './print-report.ts';
import { type Trust, verifyFolder } from './verify-folder.ts';

// The stand-alone verifier: bundled into one file that needs Node alone, and put into every exported folder.
const usage = `node verify.mjs [folder] [--key <name of a key the shop told>] [--earlier <folder of an earlier export>]`;
try {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { key: { type: 'string' }, earlier: { type: 'string' }, help: { type: 'boolean' } },
  });
  if (values.help) console.log(usage);
  else process.exitCode = printReport(await verifyFolder(positionals[0] ?? import.meta.dirname, trust(values)));
} catch (error) {
  console.error(`${error instanceof Error ? error.message : error}\n${usage}`);
  process.exitCode = 2;
}

function trust({ key, earlier }: { key?: string | undefined; earlier?: string | undefined }): Trust {
  if (!earlier) return { key };
  const { anchor } = JSON.parse(readFileSync(join(earlier, exportFiles.manifest), 'utf8')) as Manifest;
  return { key, ...(anchor ? { anchor } : {}) };
}
