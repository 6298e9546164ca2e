import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startEmbeddedPostgres } from '../apps/server/src/platform/embedded-postgres/start.ts';

/** Lends an empty database on a cluster that is thrown away afterwards. */
export async function withScratchDatabase<T>(use: (url: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'hubwright-scratch-'));
  await chmod(folder, 0o711); // as root the server runs under another account, which has to get in
  const server = await startEmbeddedPostgres(folder, { durable: false });
  try {
    return await use(server.url);
  } finally {
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  }
}
