// One throw-away PostgreSQL for the whole run, with a template database that has every migration applied.
import { existsSync } from 'node:fs';
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { tsImport } from 'tsx/esm/api';
import { cachedShopFile, keepRows, restoreRows } from './template-cache.mjs';

const here = import.meta.url;
// The server's own compiler settings: its classes are injected by decorators.
const tsconfig = fileURLToPath(new URL('../../apps/server/tsconfig.json', here));
const load = (path) => tsImport(path, { parentURL: here, tsconfig });

export async function startTestCluster() {
  const { startEmbeddedPostgres } = await load('../../apps/server/src/platform/embedded-postgres/start.ts');
  const { applyMigrations } = await load('../../prisma/migrate.ts');
  const folder = await mkdtemp(join(tmpdir(), 'hubwright-tests-'));
  await chmod(folder, 0o711); // as root the server runs under another account, which has to get in
  const server = await startEmbeddedPostgres(folder, { durable: false });
  const stop = async () => {
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  };
  try {
    await applyMigrations(server.url);
    await makeShopTemplate(server.url);
  } catch (error) {
    await stop();
    throw error;
  }
  return { url: server.url, stop };
}

/** The invented shop's reference data: as an earlier run kept it, or played through its commands. */
async function makeShopTemplate(url) {
  const shop = new URL(url);
  shop.pathname = '/template_shop';
  await withClient(new URL('/postgres', url), (client) =>
    client.query('CREATE DATABASE template_shop TEMPLATE hubwright'),
  );
  const file = await cachedShopFile();
  if (existsSync(file)) return withClient(shop, (client) => restoreRows(client, file));
  const { fillTestShop } = await load('../../seed/test-shop.ts');
  await fillTestShop(shop.href);
  await withClient(shop, (client) => keepRows(client, file));
}

async function withClient(url, use) {
  const client = new pg.Client({ connectionString: url.href });
  await client.connect();
  try {
    await use(client);
  } finally {
    await client.end();
  }
}
