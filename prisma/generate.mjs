// Writes the database client. It needs no engine binary, but Prisma's command line downloads one before doing anything
// unless it is shown an executable: this one is shown itself, and only here (with it, `prisma migrate` would print nothing).
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

const prisma = createRequire(import.meta.url).resolve('prisma/build/index.js');
const { status, stderr } = spawnSync(process.execPath, [prisma, 'generate', '--no-hints'], {
  cwd: fileURLToPath(new URL('..', import.meta.url)),
  env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, CHECKPOINT_DISABLE: '1' },
  stdio: ['ignore', 'ignore', 'pipe'],
});
if (status !== 0) process.stderr.write(stderr);
process.exit(status ?? 1);
