import { mkdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { backupName } from '../platform/backup/backups.ts';
import { writeBackup } from '../platform/backup/write-backup.ts';
import { joinEmbeddedPostgres } from '../platform/embedded-postgres/start.ts';
import { filesOf, keysOf, readSettings } from '../settings.ts';

// `npm run backup [-- <file>]`: one file with everything, also while the server runs.
const settings = readSettings(process.env);
const at = new Date();
const file = process.argv[2] ? resolve(process.argv[2]) : join(settings.backupsFolder, backupName(at));
await mkdir(join(file, '..'), { recursive: true });
const embedded = settings.ownerUrl ? undefined : await joinEmbeddedPostgres(settings.dataFolder);
try {
  const { tables, files, missingFiles } = await writeBackup(file, {
    url: settings.ownerUrl ?? embedded?.url ?? '',
    filesFolder: filesOf(settings),
    keysFolder: keysOf(settings),
    at,
    passphrase: settings.backupPassphrase,
  });
  const rows = Object.values(tables).reduce((sum, table) => sum + table.rows, 0);
  console.log(`${file}: ${Object.keys(tables).length} tables with ${rows} rows, ${files.length} files.`);
  for (const hash of missingFiles) console.error(`Stored file ${hash} is gone: the backup is without it.`);
  if (!settings.backupPassphrase)
    console.log('Not encrypted, so without the private keys. Set HUBWRIGHT_BACKUP_PASSPHRASE to have both.');
} finally {
  await embedded?.stop();
}
