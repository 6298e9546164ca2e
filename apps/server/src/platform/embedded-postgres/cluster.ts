import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { chmod, chown, mkdir, open, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { dirname, join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { type Account, canEnter, databaseAccount } from './account.ts';
import { type Binaries, postgresBinaries } from './binaries.ts';

/** Where one cluster lives and what runs it. */
export type Cluster = {
  data: string;
  log: string;
  password: string;
  account: Account;
  binaries: Binaries;
  /** Real data is flushed to disk before a commit is acknowledged; throw-away test data is not. */
  durable: boolean;
};

export const superuser = 'hubwright_owner';
const run = promisify(execFile);
// For root only: where the database account can enter although the source tree is closed to it.
const openFolder = '/var/lib/hubwright';

/** Finds the cluster that belongs to this data folder, or makes it. */
export async function openCluster(dataFolder: string, durable: boolean): Promise<Cluster> {
  const home = await clusterHome(resolve(dataFolder));
  const data = join(home, 'data');
  const account = databaseAccount(data);
  const binaries = await postgresBinaries(account, openFolder);
  const password = await keptPassword(join(home, 'password'));
  const cluster = { data, log: join(home, 'postgres.log'), password, account, binaries, durable };
  if (await exists(join(data, 'PG_VERSION'))) await refuseOtherVersion(cluster);
  else await initialise(cluster, home);
  return cluster;
}

/** Usually `<data folder>/postgres`. The place chosen at the first start is written down, so that it stays the same. */
async function clusterHome(dataFolder: string): Promise<string> {
  await makeOpen(dataFolder);
  const note = join(dataFolder, 'postgres-is-in');
  const noted = await readFile(note, 'utf8').catch(() => undefined);
  const near = join(dataFolder, 'postgres');
  const far = join(openFolder, randomBytes(6).toString('hex'));
  const home = noted?.trim() || (canEnter(databaseAccount(join(near, 'data')), dataFolder) ? near : far);
  if (home === far) await writeFile(note, `${home}\n`);
  await makeOpen(home);
  return home;
}

/** Where the cluster of a data folder is, or would be; nothing is made. */
export async function homeOf(dataFolder: string): Promise<string> {
  const noted = await readFile(join(resolve(dataFolder), 'postgres-is-in'), 'utf8').catch(() => undefined);
  return noted?.trim() || join(resolve(dataFolder), 'postgres');
}

/** A folder the database account may pass through, whatever the umask; one that existed keeps its mode. */
async function makeOpen(folder: string): Promise<void> {
  const first = await mkdir(folder, { recursive: true });
  for (let at = folder; first && at.startsWith(first); at = dirname(at)) await chmod(at, 0o711);
}

async function keptPassword(file: string): Promise<string> {
  const kept = await readFile(file, 'utf8').catch(() => undefined);
  if (kept) return kept.trim();
  const made = randomBytes(24).toString('base64url');
  await writeFile(file, `${made}\n`, { mode: 0o600, flag: 'wx' });
  return made;
}

async function refuseOtherVersion({ data, binaries }: Cluster): Promise<void> {
  const major = (await readFile(join(data, 'PG_VERSION'), 'utf8')).trim();
  const { stdout } = await run(binaries.postgres, ['--version'], { env: quietEnvironment() });
  if (!stdout.includes(` ${major}.`)) {
    throw new Error(
      `The data in ${data} was written by PostgreSQL ${major}; this is ${stdout.trim()}. Move the data folder away ` +
        'and restore the newest backup (npm run restore -- <file>), or go on with the program that wrote it.',
    );
  }
}

/** Built beside its place and moved there whole, so that a start cut short never leaves half a cluster. */
async function initialise(cluster: Cluster, home: string): Promise<void> {
  const { account, binaries, durable } = cluster;
  const half = join(home, 'data.half');
  const passwordFile = join(home, 'password.once');
  await rm(half, { recursive: true, force: true });
  await mkdir(half, { mode: 0o700 });
  await writeFile(passwordFile, `${cluster.password}\n`, { mode: 0o600 });
  if (account.uid !== undefined)
    for (const path of [half, passwordFile]) await chown(path, account.uid, account.gid ?? 0);
  // The built-in provider sorts and folds case the same on every host, whatever locales it has.
  const locale = ['--encoding=UTF8', '--locale=C', '--locale-provider=builtin', '--builtin-locale=C.UTF-8'];
  const access = [`--username=${superuser}`, `--pwfile=${passwordFile}`, '--auth=scram-sha-256'];
  const flags = [`--pgdata=${half}`, ...access, ...locale, ...(durable ? [] : ['--no-sync'])];
  await run(binaries.initdb, flags, { ...account, env: quietEnvironment(), cwd: '/' });
  await rm(passwordFile);
  await rename(half, cluster.data);
}

/** Starts the server process in a group of its own: a Ctrl-C in the terminal reaches us only, and we stop it in order. */
export async function launch(cluster: Cluster): Promise<{ process: ChildProcess; port: number }> {
  const port = await freePort();
  const log = await open(cluster.log, (await sizeOf(cluster.log)) > 10_000_000 ? 'w' : 'a', 0o600);
  const settings = Object.entries(serverSettings(cluster, port)).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
  const child = spawn(cluster.binaries.postgres, ['-D', cluster.data, ...settings], {
    ...cluster.account,
    cwd: '/',
    detached: true,
    env: quietEnvironment(),
    stdio: ['ignore', log.fd, log.fd],
  });
  child.unref();
  await log.close();
  return { process: child, port };
}

function serverSettings({ durable }: Cluster, port: number): Record<string, string | number> {
  return {
    port,
    listen_addresses: '127.0.0.1',
    unix_socket_directories: '',
    max_connections: durable ? 100 : 200,
    timezone: 'UTC',
    log_timezone: 'UTC',
    log_checkpoints: 'off',
    // Statements and failing rows hold customers' data: they stay out of the log.
    log_min_error_statement: 'panic',
    log_error_verbosity: 'terse',
    ...(durable ? {} : { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off' }),
  };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
}

/** Ours without what would steer PostgreSQL or swap its libraries. */
function quietEnvironment(): NodeJS.ProcessEnv {
  const kept = Object.entries(process.env).filter(([name]) => !/^(PG|LC_|LANG|LD_LIBRARY_PATH|NODE_|npm_)/.test(name));
  return { ...Object.fromEntries(kept), LC_ALL: 'C' };
}

const exists = (path: string) => stat(path).then(Boolean, () => false);
const sizeOf = (path: string) =>
  stat(path).then(
    (found) => found.size,
    () => 0,
  );
