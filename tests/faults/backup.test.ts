// size: one shop and its backups, spoiled in every way
import { spawn } from 'node:child_process';
import { chmod, mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileOperations } from '@hubwright/contracts/files/operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { createApp } from '../../apps/server/src/app.ts';
import { ArchiveWriter, Damaged, readArchive } from '../../apps/server/src/platform/backup/archive.ts';
import { Backups, backupName, keptBackups } from '../../apps/server/src/platform/backup/backups.ts';
import { leftOut, pieces } from '../../apps/server/src/platform/backup/contents.ts';
import {
  Refused,
  refuseHalfRestored,
  restoreDatabase,
  restoreFolder,
} from '../../apps/server/src/platform/backup/restore.ts';
import { writeBackup } from '../../apps/server/src/platform/backup/write-backup.ts';
import { Database } from '../../apps/server/src/platform/database/client.ts';
import { startEmbeddedPostgres } from '../../apps/server/src/platform/embedded-postgres/start.ts';
import { KeyFolder } from '../../apps/server/src/platform/records/shop-key.ts';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { emptyDatabase } from '../support/database.ts';
import { Job } from '../support/job.ts';
import { as } from '../support/people.ts';
import { jpeg, sendFile } from '../support/pictures.ts';
import { tableHashes } from '../support/refused.ts';
import { ShopApp } from '../support/shop-app.ts';
import { Stockroom } from '../support/stockroom.ts';

const at = new Date('2026-11-25T12:00:00.000Z');
const passphrase = 'a passphrase nobody guesses';
const shopName = 'Tansy Hollow Airscrew Works';

let room: Stockroom;
let folder: string;
/** A backup taken while eight clerks were receiving, and an encrypted one of the shop at rest. */
let underLoad: string;
let encrypted: string;
let fileHash: string;
/** What one-time codes are sealed under. */
let sealing: Buffer;
let photoId: string;
const restoredFolders: string[] = [];

const optionsOf = ({ databaseUrl, dataFolder }: ShopApp) => ({
  url: databaseUrl,
  filesFolder: join(dataFolder, 'files'),
  keysFolder: join(dataFolder, 'keys'),
  at,
});

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hubwright-backup-'));
  await chmod(folder, 0o711);
  room = await Stockroom.open();
  const database = new Database(room.shop.databaseUrl);
  const bytes = Buffer.from('a signed paper');
  fileHash = await database.prisma.$transaction((tx) =>
    room.shop.running.files.put({ tx, now: at }, { bytes, mediaType: 'text/plain', title: 'Paper' }),
  );
  await database.close();
  photoId = await arrivalPhotographed();
  underLoad = join(folder, backupName(at));
  let going = true;
  const clerks = Array.from({ length: 8 }, async () => {
    while (going) await room.received('washer', 3);
  });
  await wait(300);
  await writeBackup(underLoad, optionsOf(room.shop));
  going = false;
  await Promise.all(clerks);
  sealing = await new KeyFolder(join(room.shop.dataFolder, 'keys')).keptSecret('second-factors');
  encrypted = join(folder, 'encrypted.hubwright-backup');
  await writeBackup(encrypted, { ...optionsOf(room.shop), passphrase });
}, 120_000);
afterAll(async () => {
  await room.shop.close();
  for (const restored of restoredFolders) await rm(restored, { recursive: true, force: true });
  await rm(folder, { recursive: true, force: true });
});

/** A photo of the condition a unit came in, taken in and put on record over HTTP. */
async function arrivalPhotographed(): Promise<string> {
  const { id: workOrderId } = await Job.arrived(room.shop, '4790');
  const desk = await as(room.shop, 'front-desk');
  const sent = await sendFile(room.shop, desk, { bytes: await jpeg() });
  const photo = { workOrderId, fileId: String(sent.body.id), title: 'Crate, one corner crushed' };
  return (await desk.call(fileOperations.addConditionPhoto, photo)).body.id;
}

/** Restores into an empty database of the test cluster. */
async function intoDatabase(file: string, phrase?: string) {
  const database = await emptyDatabase();
  const target = await mkdtemp(join(folder, 'target-'));
  try {
    const ending = await restoreDatabase(file, { url: database.url, folder: target }, { at, passphrase: phrase });
    return { ending, hashes: await tableHashes(database.url), faults: (await verifyDatabase(database.url)).faults };
  } finally {
    await database.drop();
  }
}

describe('a backup', () => {
  it('taken under load holds one moment: it verifies, and every piece is where the ledger says', async () => {
    const database = await emptyDatabase();
    const target = await mkdtemp(join(folder, 'target-'));
    await restoreDatabase(underLoad, { url: database.url, folder: target }, { at });
    const client = new pg.Client({ connectionString: database.url });
    await client.connect();
    const { rows } = await client.query(
      `SELECT (SELECT count(*) FROM lots)::int AS lots, (SELECT sum(on_hand) FROM balances WHERE place_kind <> 'supplier')::int AS pieces,
         (SELECT sum(quantity) FROM movements WHERE from_kind = 'supplier')::int AS moved, (SELECT count(*) FROM receipts WHERE status IS NULL)::int AS half`,
    );
    await client.end();
    expect((await verifyDatabase(database.url, join(target, 'files'))).faults).toEqual([]);
    await database.drop();
    expect(rows[0]).toMatchObject({ half: 0 });
    expect(rows[0].lots).toBeGreaterThan(5);
    expect(rows[0].pieces).toBe(rows[0].moved);
  });

  it('of a shop at rest is the same shop, row by row', async () => {
    const { hashes, faults } = await intoDatabase(encrypted, passphrase);
    const kept = (all: Record<string, string>) =>
      Object.fromEntries(Object.entries(all).filter(([name]) => !leftOut.includes(name)));
    expect(faults).toEqual([]);
    expect(kept(hashes)).toEqual(kept(await tableHashes(room.shop.databaseUrl)));
  });

  it('restores into an empty folder on another port and answers the same', async () => {
    const target = join(folder, 'another-machine');
    restoredFolders.push(target);
    await restoreFolder(encrypted, target, { at, passphrase });
    expect(await readFile(join(target, 'files', fileHash.slice(0, 2), fileHash), 'utf8')).toBe('a signed paper');
    expect((await readdir(join(target, 'keys'))).map((name) => name.replace(/^[0-9a-f]{32}/, 'id')).sort()).toEqual([
      'id.pem',
      'second-factors.key',
    ]);
    expect(await readFile(join(target, 'keys', 'second-factors.key'))).toEqual(sealing);
    const embedded = await startEmbeddedPostgres(target);
    const running = await createApp({
      databaseUrl: embedded.url,
      filesFolder: join(target, 'files'),
      keysFolder: join(target, 'keys'),
      sessionSecret: 'another machine has another secret of its own',
    });
    const address = await running.listen(0);
    const there = ShopApp.beside(running, { address, databaseUrl: embedded.url, dataFolder: target });
    const answers = async (shop: ShopApp) => {
      const clerk = await as(shop, 'parts-room');
      const photo = await fetch(`${shop.address}/api/photos/${photoId}/file`, { headers: { cookie: clerk.cookie } });
      expect([photo.status, photo.headers.get('content-type')]).toEqual([200, 'image/jpeg']);
      const picture = Buffer.from(await photo.arrayBuffer()).toString('base64');
      return { picture, lots: (await clerk.call(inventoryOperations.listLots, { limit: 50 })).body };
    };
    expect(await answers(there)).toEqual(await answers(room.shop));
    await running.close();
    await embedded.stop();
  }, 90_000);

  it('is encrypted with age, and opens with its passphrase alone', async () => {
    expect((await readFile(encrypted)).subarray(0, 21).toString()).toBe('age-encryption.org/v1');
    await expect(intoDatabase(encrypted)).rejects.toThrow(/encrypted/);
    await expect(intoDatabase(encrypted, 'another passphrase')).rejects.toThrow(Damaged);
  });

  it('that is not encrypted holds no private key', async () => {
    const names: string[] = [];
    for await (const piece of readArchive(underLoad, undefined)) {
      names.push(piece.name);
      for await (const _ of piece.content);
    }
    expect(names).toContain(pieces.file(fileHash));
    expect(names.filter((name) => name.startsWith('keys/'))).toEqual([]);
  });
});

describe('a backup that cannot be trusted', () => {
  /** Tries to restore spoiled bytes; answers why not, and makes sure the database stayed empty. */
  async function refusedWhen(spoil: (bytes: Buffer) => Buffer, file = underLoad, phrase?: string): Promise<string> {
    const spoiled = join(folder, 'spoiled.hubwright-backup');
    await writeFile(spoiled, spoil(Buffer.from(await readFile(file))));
    const database = await emptyDatabase();
    const target = await mkdtemp(join(folder, 'target-'));
    const reason = await restoreDatabase(
      spoiled,
      { url: database.url, folder: target },
      { at, passphrase: phrase },
    ).then(
      () => 'restored',
      (error: Error) =>
        error instanceof Damaged || error instanceof Refused ? error.message : `crashed: ${error.stack}`,
    );
    const client = new pg.Client({ connectionString: database.url });
    await client.connect();
    const { rows } = await client
      .query(`SELECT to_regclass('people') IS NULL OR (SELECT count(*) FROM people) = 0 AS empty`)
      .catch(() => ({ rows: [{ empty: true }] }));
    await client.end();
    await database.drop();
    expect(rows[0].empty).toBe(true);
    return reason;
  }

  it('because one byte was changed anywhere is refused and its place named', async () => {
    const size = (await stat(underLoad)).size;
    for (let i = 0; i < 24; i += 1) {
      const place = Math.floor(((i + 0.5) / 24) * size);
      const reason = await refusedWhen((bytes) => {
        bytes[place] = (bytes[place] ?? 0) ^ 0x10;
        return bytes;
      });
      expect(reason).toMatch(
        /damaged or cut short at|is not what was backed up|was changed|is not readable|cannot be filled|no table/,
      );
    }
  }, 120_000);

  it('because it is cut short anywhere is refused', async () => {
    for (const share of [0, 0.01, 0.3, 0.6, 0.9, 0.999])
      expect(await refusedWhen((bytes) => bytes.subarray(0, Math.floor(bytes.length * share)))).toMatch(
        /damaged or cut short|is empty/,
      );
  }, 60_000);

  it('because an encrypted one was changed is refused', async () => {
    const spoil = (bytes: Buffer) => {
      bytes[bytes.length - 40] = (bytes[bytes.length - 40] ?? 0) ^ 1;
      return bytes;
    };
    expect(await refusedWhen(spoil, encrypted, passphrase)).toMatch(/damaged or cut short/);
  });

  it('because a newer program wrote it is refused, by name', async () => {
    const newer = join(folder, 'newer.hubwright-backup');
    const archive = new ArchiveWriter(newer, undefined);
    const beginning = { format: 'hubwright-backup 1', at: at.toISOString(), shop: shopName, postgres: '19' };
    const schema = [{ name: '20990101000000_of_the_future', checksum: 'x' }];
    await archive.add(pieces.beginning, Buffer.from(JSON.stringify({ ...beginning, schema })));
    await archive.end();
    await expect(intoDatabase(newer)).rejects.toThrow(/newer program \(20990101000000_of_the_future\)/);
  });

  it('is not restored over a database that holds something', async () => {
    const target = { url: room.shop.databaseUrl, folder: join(folder, 'never') };
    await expect(restoreDatabase(underLoad, target, { at })).rejects.toThrow(/not empty/);
  });
});

describe('restoring over a shop', () => {
  it('needs its name, and moves what stood there aside', async () => {
    const target = join(folder, 'occupied');
    const aside = `${target}.before-20261125-120000`;
    restoredFolders.push(target, aside);
    await restoreFolder(encrypted, target, { at, passphrase });
    await writeFile(join(target, 'a-note'), 'of the shop that stands here');
    await expect(restoreFolder(underLoad, target, { at })).rejects.toThrow(`add --replace "${shopName}"`);
    await expect(restoreFolder(underLoad, target, { at, replace: 'Another shop' })).rejects.toThrow(Refused);
    expect(await readFile(join(target, 'a-note'), 'utf8')).toContain('stands here');
    await restoreFolder(underLoad, target, { at, replace: shopName });
    expect(await readdir(target)).not.toContain('a-note');
    expect(await readFile(join(aside, 'a-note'), 'utf8')).toContain('stands here');
  }, 60_000);

  it('is refused where something else stands', async () => {
    const target = join(folder, 'not-a-shop');
    await mkdir(target);
    await writeFile(join(target, 'holiday.txt'), 'nothing to do with it');
    await expect(restoreFolder(encrypted, target, { at, passphrase, replace: '' })).rejects.toThrow(/not a shop/);
    expect(await readdir(target)).toEqual(['holiday.txt']);
  });

  it('cut short at its last moment is not answered with an empty shop', async () => {
    const target = join(folder, 'half');
    await mkdir(`${target}.restoring`);
    expect(() => refuseHalfRestored(target)).toThrow(/cut short/);
    await mkdir(target);
    expect(() => refuseHalfRestored(target)).not.toThrow();
  });
});

describe('the power goes', () => {
  /** A program of its own, and its end: exit code and what it said. */
  function program(script: string, args: string[], environment: Record<string, string>) {
    const child = spawn(process.execPath, ['--import', 'tsx', script, ...args], {
      env: { ...process.env, ...environment, NODE_OPTIONS: '', TSX_TSCONFIG_PATH: 'apps/server/tsconfig.json' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (data) => (said += data));
    const ended = new Promise<{ code: number | null; said: string }>((resolve) =>
      child.once('exit', (code) => resolve({ code, said })),
    );
    return { kill: () => child.kill('SIGKILL'), ended };
  }

  it('during a backup: there is no backup, or a whole one', async () => {
    const target = join(folder, 'cut-backups');
    const environment = {
      DATABASE_URL: room.shop.databaseUrl,
      HUBWRIGHT_DATA: room.shop.dataFolder,
      HUBWRIGHT_BACKUPS: target,
    };
    const whole = program('apps/server/src/tools/backup.ts', [], environment);
    const began = Date.now();
    expect(await whole.ended).toMatchObject({ code: 0 });
    const takes = Date.now() - began;
    for (const share of [0.5, 0.7, 0.8, 0.9, 0.95]) {
      const child = program('apps/server/src/tools/backup.ts', [], environment);
      await wait(takes * share);
      child.kill();
      await child.ended;
    }
    for (const { file } of await keptBackups(target))
      expect((await intoDatabase(join(target, file))).faults).toEqual([]);
    for (const part of (await readdir(target)).filter((name) => name.endsWith('.part')))
      await expect(intoDatabase(join(target, part))).rejects.toThrow(Damaged);
  }, 180_000);

  it('during a restore: what stood there still stands, and the next restore succeeds', async () => {
    const target = join(folder, 'cut-restore');
    restoredFolders.push(target, `${target}.restoring`);
    const environment = { HUBWRIGHT_DATA: target, HUBWRIGHT_BACKUP_PASSPHRASE: passphrase };
    for (const milliseconds of [1_500, 3_500, 5_500]) {
      const child = program('apps/server/src/tools/restore.ts', [encrypted], environment);
      await wait(milliseconds);
      child.kill();
      await child.ended;
    }
    const whole = program('apps/server/src/tools/restore.ts', [encrypted, '--replace', shopName], environment);
    expect(await whole.ended).toEqual({ code: 0, said: expect.stringContaining('Restored and verified') });
    const embedded = await startEmbeddedPostgres(target);
    expect((await verifyDatabase(embedded.url, join(target, 'files'))).faults).toEqual([]);
    await embedded.stop();
  }, 180_000);
});

describe('scheduled backups', () => {
  it('are written when the newest is too old, the newest fourteen are kept, a failure is told', async () => {
    const backupsFolder = join(folder, 'scheduled');
    let now = new Date();
    const shop = await ShopApp.open('shop', {
      clock: { now: () => now },
      backups: { folder: backupsFolder, everyHours: 24 },
    });
    const backups = shop.running.app.get(Backups);
    await backups.writeWhenDue();
    await backups.writeWhenDue();
    expect(await keptBackups(backupsFolder)).toHaveLength(1);
    for (let day = 1; day <= 15; day += 1) {
      now = new Date(now.getTime() + 25 * 3_600_000);
      await backups.writeWhenDue();
    }
    expect(await keptBackups(backupsFolder)).toHaveLength(14);
    await rm(backupsFolder, { recursive: true });
    await writeFile(backupsFolder, 'a file where the folder should be');
    await backups.writeWhenDue();
    expect(backups.failure).toMatch(/EEXIST|ENOTDIR/);
    await shop.close();
  }, 120_000);
});
