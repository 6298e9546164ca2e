// One throw-away PostgreSQL for the whole run, with a template database that has every migration applied.
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tsImport } from 'tsx/esm/api';

const here = import.meta.url;

export async function startTestCluster() {
  const { startEmbeddedPostgres } = await tsImport('../../apps/server/src/platform/embedded-postgres/start.ts', here);
  const { applyMigrations } = await tsImport('../../prisma/migrate.ts', here);
  const folder = await mkdtemp(join(tmpdir(), 'hubwright-tests-'));
  await chmod(folder, 0o711); // as root the server runs under another account, which has to get in
  const server = await startEmbeddedPostgres(folder, { durable: false });
  const stop = async () => {
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  };
  try {
    await applyMigrations(server.url);
  } catch (error) {
    await stop();
    throw error;
  }
  return { url: server.url, stop };
}
