import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { Damaged } from '../platform/backup/archive.ts';
import { Refused, restoreDatabase, restoreFolder } from '../platform/backup/restore.ts';
import { readSettings } from '../settings.ts';

// `npm run restore -- <file> [--replace "<name of the shop that stands there>"]`: into HUBWRIGHT_DATA, or into the empty
// database of DATABASE_URL. Nothing is replaced without the name, and what was replaced is moved aside, never deleted.
const { values, positionals } = parseArgs({ allowPositionals: true, options: { replace: { type: 'string' } } });
const [file] = positionals;
if (!file) {
  console.error('Say which: npm run restore -- <file> [--replace "<name of the shop that stands there>"]');
  process.exit(2);
}
const settings = readSettings(process.env);
const { dataFolder: folder, ownerUrl: url, backupPassphrase: passphrase } = settings;
try {
  const options = { passphrase, replace: values.replace, at: new Date() };
  const from = resolve(file);
  const ending = await (url ? restoreDatabase(from, { url, folder }, options) : restoreFolder(from, folder, options));
  console.log(`Restored and verified: ${Object.keys(ending.tables).length} tables, ${ending.files.length} files.`);
} catch (error) {
  if (!(error instanceof Damaged || error instanceof Refused)) throw error;
  console.error(`Nothing was changed. ${error.message}`);
  process.exitCode = 1;
}
