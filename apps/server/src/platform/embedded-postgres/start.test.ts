import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { isPostgres, readPostmaster, until } from './postmaster.ts';
import { type EmbeddedPostgres, startEmbeddedPostgres } from './start.ts';

const root = fileURLToPath(new URL('../../../../..', import.meta.url));

describe('the embedded database', () => {
  let folder: string;
  let running: EmbeddedPostgres | undefined;
  const start = async () => {
    running = await startEmbeddedPostgres(folder);
    return running;
  };

  // One folder for all, as in a shop: each start finds what the one before left.
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'hubwright-embedded-'));
    chmodSync(folder, 0o711); // as root the server runs under another account, which has to get in
  });

  afterEach(async () => {
    await running?.stop();
    running = undefined;
  });

  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('keeps its data between two runs, flushed to disk, on this machine only, behind a password nobody else can read', async () => {
    await write((await start()).url, 3);
    await running?.stop();
    const { url, adopted } = await start();
    expect([adopted, await count(url)]).toEqual([false, 3]);
    expect(await settings(url)).toEqual({ fsync: 'on', listen_addresses: '127.0.0.1', server_encoding: 'UTF8' });
    expect(statSync(join(folder, 'postgres/password')).mode & 0o777).toBe(0o600);
    const wrong = new pg.Client({ connectionString: url.replace(/:[^:@]+@/, ':guess@') });
    await expect(wrong.connect()).rejects.toMatchObject({ code: '28P01' });
  });

  it('is taken over with every row when the program that started it was killed', async () => {
    const program = await otherProgram(folder);
    await write(program.url, 5);
    program.process.kill('SIGKILL');
    await once(program.process, 'exit');
    const began = Date.now();
    const { url, adopted } = await start();
    expect([adopted, await count(url)]).toEqual([true, 5]);
    expect(Date.now() - began).toBeLessThan(10_000);
  });

  it('recovers every row when it was itself killed', async () => {
    await write((await start()).url, 7);
    const before = readPostmaster(join(folder, 'postgres/data'));
    process.kill(before?.pid ?? 0, 'SIGKILL');
    await until(() => !isPostgres(before?.pid ?? 0), 5_000);
    const began = Date.now();
    const { url, adopted } = await start();
    expect([adopted, await count(url)]).toEqual([false, 7]);
    expect(Date.now() - began).toBeLessThan(10_000);
  });

  it('is stopped and started again when it runs but does not answer', async () => {
    const program = await otherProgram(folder);
    await write(program.url, 2);
    program.process.kill('SIGKILL');
    const stuck = readPostmaster(join(folder, 'postgres/data'))?.pid ?? 0;
    process.kill(stuck, 'SIGSTOP');
    const { url, adopted } = await start();
    expect([adopted, await count(url)]).toEqual([false, 2]);
  });

  it('does not mistake another program for itself that by now has the number it left', async () => {
    await write((await start()).url, 1);
    const file = join(folder, 'postgres/data/postmaster.pid');
    const left = readFileSync(file, 'utf8');
    await running?.stop();
    writeFileSync(file, left.replace(/^\d+/, String(process.pid)));
    const { url, adopted } = await start();
    expect([adopted, await count(url)]).toEqual([false, 1]);
  });

  it('is not shared by two running programs', async () => {
    await start();
    await expect(startEmbeddedPostgres(folder)).rejects.toThrow('already running');
    expect(await settings(running?.url ?? '')).toMatchObject({ fsync: 'on' });
  });
});

/** Another process that starts the database and then only lives. */
async function otherProgram(folder: string): Promise<{ process: ChildProcess; url: string }> {
  const script = `import { startEmbeddedPostgres } from './apps/server/src/platform/embedded-postgres/start.ts';
    console.log((await startEmbeddedPostgres(process.argv[1])).url);
    setInterval(() => undefined, 1000);`;
  const flags = ['--import', 'tsx', '--input-type=module', '--eval', script, folder];
  const child = spawn(process.execPath, flags, {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, NODE_OPTIONS: '' },
  });
  const [url] = await once(createInterface({ input: child.stdout }), 'line');
  return { process: child, url: String(url) };
}

async function query(url: string, sql: string): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url });
  client.on('error', () => undefined);
  await client.connect();
  try {
    return (await client.query(sql)).rows as Record<string, unknown>[];
  } finally {
    await client.end();
  }
}

async function write(url: string, rows: number): Promise<void> {
  await query(url, 'DROP TABLE IF EXISTS kept');
  await query(url, 'CREATE TABLE kept (id int)');
  await query(url, `INSERT INTO kept SELECT generate_series(1, ${rows})`);
}

async function count(url: string): Promise<number> {
  return Number((await query(url, 'SELECT count(*) FROM kept'))[0]?.count);
}

async function settings(url: string): Promise<Record<string, unknown>> {
  const rows = await query(
    url,
    "SELECT name, setting FROM pg_settings WHERE name IN ('fsync', 'listen_addresses', 'server_encoding')",
  );
  return Object.fromEntries(rows.map(({ name, setting }) => [String(name), setting]));
}
