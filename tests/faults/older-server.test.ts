import { chmod, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { createApp } from '../../apps/server/src/app.ts';
import { leftOut } from '../../apps/server/src/platform/backup/contents.ts';
import { restoreDatabase, restoreFolder } from '../../apps/server/src/platform/backup/restore.ts';
import { writeBackup } from '../../apps/server/src/platform/backup/write-backup.ts';
import { startEmbeddedPostgres } from '../../apps/server/src/platform/embedded-postgres/start.ts';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { Job } from '../support/job.ts';
import { type OlderServer, olderPostgres, startOlderServer } from '../support/older-postgres.ts';
import { as } from '../support/people.ts';
import { tableHashes } from '../support/refused.ts';
import { ShopApp } from '../support/shop-app.ts';

const at = new Date('2026-11-25T12:00:00.000Z');
const passphrase = 'a passphrase nobody guesses';
const shopName = 'Tansy Hollow Airscrew Works';

/** Of what a backup holds. */
async function kept(url: string): Promise<Record<string, string>> {
  const all = Object.entries(await tableHashes(url));
  return Object.fromEntries(all.filter(([name]) => !leftOut.includes(name)));
}

async function majorOf(url: string): Promise<string> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const { rows } = await client.query<{ version: string }>("SELECT current_setting('server_version') AS version");
  await client.end();
  return rows[0]?.version.split('.')[0] ?? '';
}

// Without the older version there is nothing to move from; it comes with the packages on Linux, x64.
(olderPostgres ? describe : describe.skip)('a shop on PostgreSQL 15', () => {
  let older: OlderServer;
  let folder: string;
  let here: ShopApp;
  const folderOf = (name: string) => join(folder, name);
  const serverOn = (url: string, name: string) =>
    createApp({
      databaseUrl: url,
      filesFolder: join(folderOf(name), 'files'),
      keysFolder: join(folderOf(name), 'keys'),
      sessionSecret: 'another machine has another secret of its own',
    });

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'hubwright-move-'));
    await chmod(folder, 0o711);
    here = await ShopApp.open('shop');
    older = await startOlderServer(olderPostgres ?? '');
  }, 120_000);
  afterAll(async () => {
    await older.discard();
    await rm(folder, { recursive: true, force: true });
    await here.close();
  }, 60_000);

  it('gets its records from a backup that a newer version wrote, and goes on working', async () => {
    const backup = folderOf('from-newer.hubwright-backup');
    const { databaseUrl: url, dataFolder } = here;
    await writeBackup(backup, {
      url,
      ...{ filesFolder: join(dataFolder, 'files'), keysFolder: join(dataFolder, 'keys'), at, passphrase },
    });
    await restoreDatabase(backup, { url: older.url, folder: folderOf('older') }, { at, passphrase });
    expect([await majorOf(url), await majorOf(older.url)]).toEqual(['18', '15']);
    expect(await kept(older.url)).toEqual(await kept(url));
    const running = await serverOn(older.url, 'older');
    const address = await running.listen(0);
    const there = ShopApp.beside(running, { address, databaseUrl: older.url, dataFolder: folderOf('older') });
    const job = await Job.arrived(there, '4795');
    await job.tornDown();
    expect(await job.workOrder()).toMatchObject({ stage: 'teardown' });
    await running.close();
  }, 120_000);

  it('moves to the version that comes along with every row, verifies there, and goes on where it was', async () => {
    const before = await kept(older.url);
    const backup = folderOf('from-older.hubwright-backup');
    const files = { filesFolder: join(folderOf('older'), 'files'), keysFolder: join(folderOf('older'), 'keys') };
    await writeBackup(backup, { url: older.url, ...files, at, passphrase });
    await restoreFolder(backup, folderOf('newer'), { at, passphrase });
    const embedded = await startEmbeddedPostgres(folderOf('newer'));
    try {
      expect(await majorOf(embedded.url)).toBe('18');
      const { anchors: _, ...rows } = await kept(embedded.url);
      const { anchors: __, anchored_heads: ___, ...was } = before;
      expect(rows).toMatchObject(was);
      expect((await verifyDatabase(embedded.url, join(folderOf('newer'), 'files'))).faults).toEqual([]);
      const running = await serverOn(embedded.url, 'newer');
      const address = await running.listen(0);
      const there = ShopApp.beside(running, { address, databaseUrl: embedded.url, dataFolder: folderOf('newer') });
      await as(there, 'inspector');
      await (await Job.arrived(there, '4796')).tornDown();
      await running.close();
    } finally {
      await embedded.stop();
    }
  }, 120_000);

  it('is not opened by the newer program from its own folder: it says what to do, and touches nothing', async () => {
    const data = folderOf('newer/postgres/data');
    const version = await readFile(join(older.data, 'PG_VERSION'), 'utf8');
    await older.stop();
    await writeFile(join(data, 'PG_VERSION'), version);
    await expect(startEmbeddedPostgres(folderOf('newer'))).rejects.toThrow(
      /written by PostgreSQL 15; .*18.*Move the data folder away and restore the newest backup/,
    );
    await writeFile(join(data, 'PG_VERSION'), '18\n');
    const opened = await startEmbeddedPostgres(folderOf('newer'));
    const client = new pg.Client({ connectionString: opened.url });
    await client.connect();
    expect((await client.query('SELECT name FROM shop_profile')).rows).toEqual([{ name: shopName }]);
    await client.end();
    await opened.stop();
  }, 60_000);
});
