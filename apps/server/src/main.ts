import { applyMigrations, schemaVersionState } from '../../../prisma/migrate.ts';
import { createApp } from './app.ts';
import { refuseHalfRestored } from './platform/backup/restore.ts';
import { startEmbeddedPostgres } from './platform/embedded-postgres/start.ts';
import { filesOf, keptSecret, keysOf, readSettings, type Settings } from './settings.ts';

type Stop = () => Promise<void>;

/** Brings the database up and its tables up to date; answers the address the server works with. */
async function readyDatabase(settings: Settings, stops: Stop[]): Promise<string> {
  const { ownerUrl, serverUrl } = settings;
  if (!ownerUrl && serverUrl) {
    const version = await schemaVersionState(serverUrl);
    if (version !== 'current')
      throw new Error(`The database is ${version}: start once with DATABASE_URL of its owner.`);
    return serverUrl;
  }
  if (ownerUrl) {
    await applyMigrations(ownerUrl);
    return serverUrl ?? ownerUrl;
  }
  refuseHalfRestored(settings.dataFolder);
  const embedded = await startEmbeddedPostgres(settings.dataFolder);
  stops.unshift(embedded.stop);
  if (embedded.adopted) console.log('Took over the database that was left running.');
  await applyMigrations(embedded.url);
  if (settings.demo) await inventShop(embedded.url, settings);
  return embedded.url;
}

/** The demonstration exists only on the embedded database: an empty one is filled with the invented shop. */
async function inventShop(databaseUrl: string, settings: Settings): Promise<void> {
  const { demoSignIns, seedIfEmpty, shopToday } = await import('../../../seed/index.ts');
  const began = Date.now();
  if (await seedIfEmpty(databaseUrl, { today: shopToday(new Date()), filesFolder: filesOf(settings) })) {
    console.log(`Filled the invented shop in ${Math.round((Date.now() - began) / 1000)} s.`);
  }
  console.log(`Demonstration data, not for use on aircraft. Sign in as:\n${demoSignIns()}`);
}

async function start(settings: Settings, stops: Stop[]): Promise<void> {
  const databaseUrl = await readyDatabase(settings, stops);
  const { secure, dashboardFolder, requestsPerMinute } = settings;
  const server = await createApp({
    databaseUrl,
    sessionSecret: settings.sessionSecret ?? keptSecret(settings.dataFolder),
    secure,
    clockSetBack: settings.clockSetBack,
    requestsPerMinute,
    ...(settings.smtpUrl === undefined ? {} : { smtpUrl: settings.smtpUrl }),
    filesFolder: filesOf(settings),
    keysFolder: keysOf(settings),
    backups: {
      folder: settings.backupsFolder,
      everyHours: settings.backupHours,
      passphrase: settings.backupPassphrase,
    },
    ...(dashboardFolder ? { dashboardFolder } : {}),
  });
  stops.unshift(server.close);
  const address = await server.listen(settings.port, settings.host);
  console.log(`Hubwright is ready at ${address}`);
}

/** What was started is stopped in the opposite order. Terminals and npm may each deliver the same Ctrl-C: once is enough. */
function stopOnSignal(stops: Stop[]): void {
  let stopping = false;
  const stop = async () => {
    if (stopping) return;
    stopping = true;
    await stopAll(stops);
    process.exit(0);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, stop);
}

async function stopAll(stops: Stop[]): Promise<void> {
  for (const stop of stops) await stop().catch((error) => console.error(error.message));
}

const stops: Stop[] = [];
stopOnSignal(stops);
try {
  await start(readSettings(process.env), stops);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  await stopAll(stops);
  process.exit(1);
}
