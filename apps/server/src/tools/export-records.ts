import { resolve } from 'node:path';
import { joinEmbeddedPostgres } from '../platform/embedded-postgres/start.ts';
import { exportRecords } from '../platform/records/export.ts';
import { KeyFolder } from '../platform/records/shop-key.ts';
import { filesOf, keysOf, readSettings, verifierFile } from '../settings.ts';

// `npm run export-records -- <empty folder>`: all records with their anchors, and the program that checks them.
const folder = process.argv[2];
if (!folder) {
  console.error('Say where to: npm run export-records -- <empty folder>');
  process.exit(2);
}
const settings = readSettings(process.env);
const embedded = settings.ownerUrl ? undefined : await joinEmbeddedPostgres(settings.dataFolder);
try {
  const manifest = await exportRecords(resolve(folder), {
    url: settings.ownerUrl ?? embedded?.url ?? '',
    filesFolder: filesOf(settings),
    keys: new KeyFolder(keysOf(settings)),
    at: new Date(),
    verifier: verifierFile,
  });
  console.log(`Wrote ${manifest.files.length} files. Check them: node ${folder}/verify.mjs --key ${manifest.key}`);
} finally {
  await embedded?.stop();
}
