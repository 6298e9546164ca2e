// One throw-away PostgreSQL for the whole run, with a template database that has every migration applied.
import { existsSync } from 'node:fs';
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { tsImport } from 'tsx/esm/api';

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

/** Filled by `fillTestShop(url)` of seed/test-shop.ts when that file is there; until then it is as empty as the other. */
async function makeShopTemplate(url) {
  const shop = new URL(url);
  shop.pathname = '/template_shop';
  const client = new pg.Client({ connectionString: new URL('/postgres', url).href });
  await client.connect();
  await client.query('CREATE DATABASE template_shop TEMPLATE hubwright');
  await client.end();
  if (!existsSync(new URL('../../seed/test-shop.ts', here))) return;
  const { fillTestShop } = await load('../../seed/test-shop.ts');
  await fillTestShop(shop.href);
}
