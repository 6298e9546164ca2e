import { joinEmbeddedPostgres } from '../platform/embedded-postgres/start.ts';
import { printReport } from '../platform/records/print-report.ts';
import { verifyDatabase } from '../platform/records/verify-database.ts';
import { filesOf, readSettings } from '../settings.ts';

// `npm run verify-records`: checks every chain, anchor, key, sealed row and stored file, also while the server runs.
const settings = readSettings(process.env);
const embedded = settings.ownerUrl ? undefined : await joinEmbeddedPostgres(settings.dataFolder);
try {
  process.exitCode = printReport(await verifyDatabase(settings.ownerUrl ?? embedded?.url ?? '', filesOf(settings)));
} finally {
  await embedded?.stop();
}
