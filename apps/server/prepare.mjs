// What must be there before anything runs: a Node that is new enough, the packages of the lock file, and builds that
// match their sources. Plain Node without packages, since it is what installs them.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));
const oldest = [20, 19];

export function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > oldest[0] || (major === oldest[0] && minor >= oldest[1])) return;
  throw new Error(`Hubwright needs Node ${oldest.join('.')} or newer; this is ${process.versions.node}.`);
}

/** Installs when what is installed is not what the lock file names. */
export function ensureInstalled() {
  if (isInstalled()) return false;
  console.log('Installing packages …');
  const npm = process.env.npm_execpath?.endsWith('.js') ? [process.execPath, process.env.npm_execpath] : ['npm'];
  run([...npm, 'ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund'], 'npm ci');
  return true;
}

function isInstalled() {
  const installed = packagesOf('node_modules/.package-lock.json');
  if (!installed) return false;
  const wanted = Object.entries(packagesOf('package-lock.json') ?? {});
  return wanted.every(([path, { version, optional, devOptional, link }]) => {
    if (!path.includes('node_modules/') || link) return true;
    const found = installed[path];
    return found ? found.version === version : optional === true || devOptional === true;
  });
}

function packagesOf(file) {
  const path = join(root, file);
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')).packages : undefined;
}

/** Generates the client and builds server and dashboard, each only when its sources changed since it was last built. */
export function ensureBuilt() {
  ensureGenerated();
  step('server', ['apps/server/src', 'apps/server/build.mjs', 'packages', 'prisma', 'seed', 'package-lock.json'], {
    makes: 'apps/server/dist/main.js',
    command: [process.execPath, 'apps/server/build.mjs'],
  });
  if (!existsSync(join(root, 'apps/dashboard/index.html'))) return;
  const sources = ['src', 'public', 'index.html', 'vite.config.ts', 'package.json'].map(
    (name) => `apps/dashboard/${name}`,
  );
  step('dashboard', [...sources, 'packages', 'package-lock.json'], {
    makes: 'apps/dashboard/dist/index.html',
    command: [process.execPath, '../../node_modules/vite/bin/vite.js', 'build', '--logLevel', 'warn'],
    from: 'apps/dashboard',
  });
}

export function ensureGenerated() {
  step('database client', ['prisma/schema', 'prisma/generate.mjs', 'package-lock.json'], {
    makes: 'apps/server/src/platform/database/generated/client.ts',
    command: [process.execPath, 'prisma/generate.mjs'],
  });
}

function step(name, sources, { makes, command, from = '.' }) {
  const stamps = join(root, 'node_modules/.cache/hubwright');
  const stamp = join(stamps, name.replaceAll(' ', '-'));
  const print = fingerprint(sources);
  if (existsSync(join(root, makes)) && existsSync(stamp) && readFileSync(stamp, 'utf8') === print) return;
  console.log(`Building the ${name} …`);
  run(command, name, from);
  mkdirSync(stamps, { recursive: true });
  writeFileSync(stamp, print);
}

function fingerprint(sources) {
  const hash = createHash('sha256');
  for (const path of sources.flatMap((source) => filesIn(source)).sort()) {
    hash
      .update(path)
      .update('\0')
      .update(readFileSync(join(root, path)));
  }
  return hash.digest('hex');
}

function filesIn(source) {
  if (!existsSync(join(root, source))) return [];
  if (/\.\w+$/.test(source)) return [source];
  return readdirSync(join(root, source), { withFileTypes: true }).flatMap((entry) => {
    const path = `${source}/${entry.name}`;
    if (entry.isDirectory())
      return ['node_modules', 'dist', 'generated'].includes(entry.name) ? [] : filesIn(`${path}`);
    return /\.test\.tsx?$/.test(entry.name) ? [] : [path];
  });
}

function run([program, ...rest], name, from = '.') {
  const { status, error } = spawnSync(program, rest, {
    cwd: join(root, from),
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (status !== 0) throw new Error(`${name} did not succeed${error ? `: ${error.message}` : ''}`);
}
