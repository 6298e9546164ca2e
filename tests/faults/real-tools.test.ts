import { execFile, execFileSync } from 'node:child_process';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { applyMigrations } from '../../prisma/migrate.ts';
import { type OlderServer, olderPostgres, startOlderServer } from '../support/older-postgres.ts';

const run = promisify(execFile);
const script = (name: string) => fileURLToPath(new URL(`../../apps/server/real-database/${name}`, import.meta.url));

/** PostgreSQL's own tools are not packages of the registry: where a machine has none, these cannot be run. */
const hasTools = ['pg_dump', 'pg_restore', 'pg_basebackup'].every((tool) => {
  try {
    return Number(/ (\d+)/.exec(execFileSync(tool, ['--version'], { encoding: 'utf8' }))?.[1]) >= 15;
  } catch {
    return false;
  }
});

(olderPostgres && hasTools ? describe : describe.skip)('the scripts for a real server', () => {
  let server: OlderServer;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'hubwright-tools-'));
    server = await startOlderServer(olderPostgres ?? '');
    await applyMigrations(server.url);
  }, 60_000);
  afterAll(async () => {
    await server.stop();
    await server.discard();
    await rm(folder, { recursive: true, force: true });
  }, 30_000);

  it('copy a running server whole, and verify the copy; a folder that holds something is refused', async () => {
    const { hostname, port, username, password } = new URL(server.url);
    const env = { ...process.env, PGHOST: hostname, PGPORT: port, PGUSER: username, PGPASSWORD: password };
    const target = join(folder, 'base');
    const { stdout } = await run('bash', [script('base-backup.sh'), target], { env });
    expect(stdout).toContain(`Whole and verified: ${target}`);
    expect(await readdir(target)).toEqual(expect.arrayContaining(['backup_label', 'backup_manifest', 'PG_VERSION']));
    await expect(run('bash', [script('base-backup.sh'), target], { env })).rejects.toThrow(/not empty/);
  }, 60_000);

  it('write one file that pg_restore brings back with every table', async () => {
    const file = join(folder, 'shop.dump');
    await run('bash', [script('dump.sh'), file], { env: { ...process.env, DATABASE_URL: server.url } });
    const restored = new URL(server.url);
    restored.pathname = '/restored';
    const tables = async (url: string) => {
      const client = new pg.Client({ connectionString: url });
      await client.connect();
      const { rows } = await client.query(
        `SELECT relname, relkind FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'i', 'S') ORDER BY 1`,
      );
      const triggers = await client.query(`SELECT tgname FROM pg_trigger WHERE NOT tgisinternal ORDER BY 1`);
      await client.end();
      return { tables: rows, triggers: triggers.rows };
    };
    const client = new pg.Client({ connectionString: server.url });
    await client.connect();
    await client.query('CREATE DATABASE restored');
    await client.end();
    await run('pg_restore', ['--no-owner', '--exit-on-error', `--dbname=${restored}`, file]);
    expect(await tables(restored.href)).toEqual(await tables(server.url));
    expect((await tables(server.url)).tables.length).toBeGreaterThan(100);
  }, 60_000);
});
