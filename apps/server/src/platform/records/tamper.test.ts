// size: every way to spoil one shop, told side by side
import { execFile } from 'node:child_process';
import { appendFile, cp, mkdtemp, readFile, rm, truncate, unlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { append, canonicalJson } from '@hubwright/rules/chain';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { copyOf, type TestDatabase } from '../../../../../tests/support/database.ts';
import { Job } from '../../../../../tests/support/job.ts';
import { pin } from '../../../../../tests/support/people.ts';
import { Stockroom } from '../../../../../tests/support/stockroom.ts';
import { ensureBuilt } from '../../../prepare.mjs';
import { judgeLot } from '../../modules/inventory/judge-lot.command.ts';
import { verifierFile } from '../../settings.ts';
import { Database } from '../database/client.ts';
import { FolderFileStore } from '../files/store.ts';
import { exportRecords } from './export.ts';
import { introduce, KeyFolder, makeKey, signText } from './shop-key.ts';
import { takeAnchor } from './take-anchor.ts';
import { verifyDatabase } from './verify-database.ts';
import { verifyFolder } from './verify-folder.ts';

const at = new Date('2026-11-25T12:00:00.000Z');
const later = new Date('2026-11-25T12:10:00.000Z');

/** One shop with two anchors, a stored file and an entry after the last anchor; everything below spoils a copy of it. */
let url: string;
let files: string;
let keys: KeyFolder;
let folder: string;
/** A lot whose chain both anchors saw. */
let lotId: string;
let hash: string;
/** The same shop while its newest entries, a signature among them, are under no anchor. */
let unanchored: TestDatabase;

beforeAll(async () => {
  ensureBuilt();
  folder = await mkdtemp(join(tmpdir(), 'hubwright-tamper-'));
  const room = await Stockroom.open();
  url = room.shop.databaseUrl;
  files = join(folder, 'files');
  keys = new KeyFolder(join(folder, 'keys'));
  const lot = await room.received('washer', 10);
  lotId = lot.id;
  await takeAnchor(url, keys, at);
  await room.shop.run(judgeLot, { lotId, verdict: 'accepted', bin: 'B-01', signature: pin }, room.inspector, {
    version: lot.version,
  });
  const database = new Database(url);
  const store = new FolderFileStore(files);
  hash = await database.prisma.$transaction((tx) =>
    store.put({ tx, now: at }, { bytes: Buffer.from('a signed paper'), mediaType: 'text/plain', title: 'Paper' }),
  );
  await database.close();
  await takeAnchor(url, keys, later);
  await room.received('seal', 5);
  await Job.arrived(room.shop, '4797');
  await room.shop.running.close();
  unanchored = await copyOf(url);
}, 120_000);
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

/** Runs statements as someone who owns the database and switches its guards off. */
async function spoiled(...statements: string[]) {
  const copy = await copyOf(url);
  const client = new pg.Client({ connectionString: copy.url });
  await client.connect();
  try {
    await client.query(`SET session_replication_role = replica`);
    for (const statement of statements) await client.query(statement.replaceAll('$lot', `'${lotId}'`));
    return await verifyDatabase(copy.url, files);
  } finally {
    await client.end();
    await copy.drop();
  }
}

describe('records of a database', () => {
  it('hold as the shop wrote them', async () => {
    const report = await spoiled();
    expect(report.faults).toEqual([]);
    expect(report).toMatchObject({ anchors: 2, files: 1, notices: [] });
    expect(report.chains).toBeGreaterThan(10);
  });

  const entry = (sequence: number) =>
    `(SELECT entry_id FROM record_links WHERE subject_id = $lot AND sequence = ${sequence})`;
  it.each([
    [
      'a changed entry',
      [`UPDATE record_entries SET body = replace(body, '"quantity":10', '"quantity":90') WHERE id = ${entry(1)}`],
      [/^lot .*, entry 1$/, 'the entry or its link was changed, or entries stand in another order'],
    ],
    [
      'a changed column beside an entry',
      [`UPDATE record_entries SET command = 'other' WHERE id = ${entry(1)}`],
      [/^lot .*, entry 1$/, 'a column beside the entry was changed'],
    ],
    [
      'a removed entry',
      [`DELETE FROM record_entries WHERE id = ${entry(1)}`],
      [/^lot .*, entry 1$/, 'the entry of this link is gone'],
    ],
    [
      'a removed link',
      [`DELETE FROM record_links WHERE subject_id = $lot AND sequence = 1`],
      [/^lot .*, entry 2$/, 'entry 1 is missing before this one'],
    ],
    [
      'entries in another order',
      [
        `UPDATE record_links SET sequence = 99 WHERE subject_id = $lot AND sequence = 1`,
        `UPDATE record_links SET sequence = 1 WHERE subject_id = $lot AND sequence = 2`,
        `UPDATE record_links SET sequence = 2 WHERE subject_id = $lot AND sequence = 99`,
      ],
      [/^lot .*, entry 1$/, 'the entry or its link was changed, or entries stand in another order'],
    ],
    [
      'a tail cut off with its head set back',
      [
        `DELETE FROM record_links WHERE subject_id = $lot AND sequence = 2`,
        `UPDATE record_heads h SET sequence = 1, hash = l.hash FROM record_links l WHERE h.subject_id = $lot AND l.subject_id = $lot`,
      ],
      [/^lot .*, entry 2$/, 'anchor 2 saw this entry; it is gone'],
    ],
    [
      'a subject taken away whole',
      [`DELETE FROM record_links WHERE subject_id = $lot`, `DELETE FROM record_heads WHERE subject_id = $lot`],
      [/^lot .*, entry 1$/, 'anchor 1 saw this chain; it is gone'],
    ],
    [
      'a changed stock movement',
      [`UPDATE movements SET quantity = 9 WHERE lot_id = $lot AND from_kind = 'supplier'`],
      [/^table movements, rows covered by anchor 1 /, expect.stringMatching(/^a row of \d+ was changed$/)],
    ],
    [
      'a removed stock movement',
      [`DELETE FROM movements WHERE lot_id = $lot AND from_kind = 'supplier'`],
      [/^table movements, rows covered by anchor 1 /, expect.stringMatching(/^1 of \d+ rows are gone$/)],
    ],
    [
      'a stock movement added under an old entry',
      [
        `INSERT INTO movements (id, at, lot_id, part_id, quantity, from_kind, from_ref, to_kind, to_ref, reason, person_id, entry_id)
         SELECT gen_random_uuid(), at, lot_id, part_id, 1, from_kind, from_ref, to_kind, to_ref, reason, person_id, entry_id FROM movements WHERE lot_id = $lot LIMIT 1`,
      ],
      [/^table movements, rows covered by anchor \d /, expect.stringMatching(/^1 rows were added to \d+$/)],
    ],
    [
      'an anchor changed',
      [`UPDATE anchors SET body = replace(body, '12:10', '12:11') WHERE sequence = 2`],
      [/^anchor 2$/, 'the anchor was changed'],
    ],
    [
      'an anchor removed',
      [`DELETE FROM anchors WHERE sequence = 1`],
      [/^anchor 2$/, 'anchor 1 is missing before this one'],
    ],
    [
      'the list of an anchor changed',
      [`UPDATE anchored_heads SET after = 7 WHERE subject_id = $lot AND anchor = 2`],
      [/^anchor 2$/, 'its list of chains was changed'],
    ],
    [
      'a key exchanged',
      [`UPDATE shop_keys SET statement = replace(statement, '2026', '2025')`],
      [/^shop key /, 'the statement was changed after it was signed'],
    ],
  ])('name %s', async (_, statements, [place, reason]) => {
    const { faults } = await spoiled(...statements);
    expect(faults).toContainEqual({ place: expect.stringMatching(place as RegExp), reason });
  });

  it('name an entry slipped in, although every hash after it was made anew', async () => {
    const copy = await copyOf(url);
    const client = new pg.Client({ connectionString: copy.url });
    await client.connect();
    await client.query('SET session_replication_role = replica');
    const { rows } = await client.query<{ body: string; id: string }>(
      'SELECT e.body, e.id FROM record_links l JOIN record_entries e ON e.id = l.entry_id WHERE l.subject_id = $1 ORDER BY l.sequence',
      [lotId],
    );
    const bodies = rows.map((row) => JSON.parse(row.body));
    bodies.splice(1, 0, { ...bodies[0], id: '0197c0de-0000-7000-8000-0000000000aa' });
    await client.query('DELETE FROM record_links WHERE subject_id = $1', [lotId]);
    await client.query(`INSERT INTO record_entries (id, at, command, person_id, body) VALUES ($1, $2, $3, $4, $5)`, [
      bodies[1].id,
      bodies[1].at,
      bodies[1].command,
      bodies[1].who.person,
      canonicalJson(bodies[1]),
    ]);
    let last: ReturnType<typeof append> | undefined;
    for (const body of bodies) {
      last = append(last, body);
      await client.query('INSERT INTO record_links VALUES ($1, $2, $3, $4, $5, $6)', [
        'lot',
        lotId,
        last.sequence,
        last.previous,
        last.hash,
        body.id,
      ]);
    }
    await client.query('UPDATE record_heads SET sequence = $2, hash = $3 WHERE subject_id = $1', [
      lotId,
      last?.sequence,
      last?.hash,
    ]);
    const { faults } = await verifyDatabase(copy.url, files);
    await client.end();
    await copy.drop();
    expect(faults).toContainEqual({ place: `lot ${lotId}, entry 2`, reason: 'the entry is not the one anchor 2 saw' });
  });

  it('name a signature that is gone, also one that no anchor has seen yet', async () => {
    const newest = `(SELECT id FROM sign_offs ORDER BY id DESC LIMIT 1)`;
    const { faults } = await spoiled(`DELETE FROM sign_offs WHERE id = ${newest}`);
    expect(faults).toEqual([
      {
        place: expect.stringMatching(/^signature [0-9a-f-]{36}$/),
        reason: expect.stringMatching(/^it is gone; entry [0-9a-f-]{36} names it$/),
      },
    ]);
  });

  it('name a stored file that was changed and one that is gone', async () => {
    const path = join(files, hash.slice(0, 2), hash);
    const bytes = await readFile(path);
    await writeFile(path, 'a signed papeR');
    expect((await spoiled()).faults).toEqual([{ place: `file ${hash}`, reason: 'the file was changed' }]);
    await unlink(path);
    expect((await spoiled()).faults).toEqual([{ place: `file ${hash}`, reason: 'the file is gone' }]);
    await writeFile(path, bytes);
  });
});

describe('the shop key', () => {
  it('is followed by one it signed; a new one without its word is named, a false word is a fault', async () => {
    const copy = await copyOf(url);
    const client = new pg.Client({ connectionString: copy.url });
    await client.connect();
    const { rows } = await client.query<{ id: string }>('SELECT id FROM shop_keys');
    const old = await keys.find(rows[0]?.id ?? '');
    const second = makeKey();
    const add = (row: ReturnType<typeof introduce>) =>
      client.query(
        'INSERT INTO shop_keys (id, at, statement, signature, previous_signature) VALUES ($1, now(), $2, $3, $4)',
        [row.id, row.statement, row.signature, row.previousSignature],
      );
    await add(introduce(second, later.toISOString(), old));
    await keys.keep(second);
    await client.query(
      `SET session_replication_role = replica; UPDATE record_heads SET sequence = sequence WHERE false`,
    );
    expect((await takeAnchor(copy.url, keys, later))?.keyId).toBe(second.id);
    expect(await verifyDatabase(copy.url)).toMatchObject({ faults: [], notices: [], keys: [old?.id, second.id] });

    const third = makeKey();
    await add(introduce(third, later.toISOString()));
    expect((await verifyDatabase(copy.url)).notices).toEqual([
      { place: `shop key ${third.id}`, reason: expect.stringContaining('without the word of the key before it') },
    ]);
    const fourth = makeKey();
    const row = introduce(fourth, later.toISOString(), third);
    await add({ ...row, previousSignature: signText(second, row.statement) });
    expect((await verifyDatabase(copy.url)).faults).toEqual([
      { place: `shop key ${fourth.id}`, reason: 'the key before it did not sign it' },
    ]);
    await client.end();
    await copy.drop();
  });

  it('is made anew when its file is lost, as after a restore without keys, and says so', async () => {
    const copy = await copyOf(url);
    const empty = new KeyFolder(join(folder, 'other-keys'));
    await takeAnchor(copy.url, empty, later);
    const report = await verifyDatabase(copy.url);
    await copy.drop();
    expect(report.faults).toEqual([]);
    expect(report.notices).toHaveLength(1);
  });
});

describe('an exported folder', () => {
  let exported: string;
  let key: string;
  beforeAll(async () => {
    exported = join(folder, 'export');
    ({ key } = await exportRecords(exported, { url, filesFolder: files, keys, at: later, verifier: verifierFile }));
  });
  const spoiledFolder = async (spoil: (folder: string) => Promise<unknown>) => {
    const copy = join(folder, 'spoiled');
    await rm(copy, { recursive: true, force: true });
    await cp(exported, copy, { recursive: true });
    await spoil(copy);
    return verifyFolder(copy, { key });
  };

  it('holds, and the verifier inside needs Node alone', async () => {
    expect(await verifyFolder(exported, { key })).toMatchObject({ faults: [], anchors: 3, files: 1, keys: [key] });
    const run = promisify(execFile)(process.execPath, ['verify.mjs', '--key', key], { cwd: exported, env: {} });
    expect((await run).stdout).toContain('0 faults');
  });

  it('is not written where something is', async () => {
    const options = { url, filesFolder: files, keys, at: later, verifier: verifierFile };
    await expect(exportRecords(exported, options)).rejects.toThrow('not empty');
  });

  it('names whatever single file of it has one byte changed', async () => {
    const { files: listed } = JSON.parse(await readFile(join(exported, 'manifest.json'), 'utf8')) as {
      files: { path: string; bytes: number }[];
    };
    expect(listed.length).toBeGreaterThan(8);
    for (const { path, bytes } of listed.filter((one) => one.bytes > 0)) {
      const { faults } = await spoiledFolder(async (copy) => {
        const content = await readFile(join(copy, path));
        const place = Math.floor(bytes / 2);
        content[place] = (content[place] ?? 0) ^ 1;
        await writeFile(join(copy, path), content);
      });
      expect(faults).toContainEqual({ place: path, reason: 'the file was changed after the export' });
    }
  });

  it.each([
    ['a manifest that lists another hash', 'manifest.json', 'the manifest was changed after it was signed'],
    ['another signature', 'manifest.signature.txt', 'the manifest was changed after it was signed'],
  ])('names %s', async (_, file, reason) => {
    const { faults } = await spoiledFolder(async (copy) => {
      const text = await readFile(join(copy, file), 'utf8');
      await writeFile(
        join(copy, file),
        text.replace(/[a-z]/, (letter) => (letter === 'a' ? 'b' : 'a')),
      );
    }).catch((error: Error) => ({ faults: [{ place: 'manifest.json', reason: error.message }] }));
    expect(faults.map((fault) => fault.place)).toContain('manifest.json');
    if (file !== 'manifest.json') expect(faults).toContainEqual({ place: 'manifest.json', reason });
  });

  it('names a missing file, an added one and a cut one', async () => {
    const { faults } = await spoiledFolder(async (copy) => {
      await unlink(join(copy, 'chains/heads.jsonl'));
      await writeFile(join(copy, 'extra.txt'), 'hello');
      await truncate(join(copy, 'anchors/keys.jsonl'), 10);
    });
    expect(faults).toContainEqual({ place: 'chains/heads.jsonl', reason: 'the file is missing' });
    expect(faults).toContainEqual({ place: 'extra.txt', reason: 'the file is not listed in the manifest' });
    expect(faults).toContainEqual({ place: 'anchors/keys.jsonl', reason: expect.stringContaining('has 10 bytes') });
  });

  it('names what was gone before it was written: a signature no anchor had seen, a stored file and its row', async () => {
    const client = new pg.Client({ connectionString: unanchored.url });
    await client.connect();
    const unkept = '0'.repeat(64);
    await client.query(`SET session_replication_role = replica`);
    await client.query(`DELETE FROM sign_offs WHERE id = (SELECT id FROM sign_offs ORDER BY id DESC LIMIT 1)`);
    const { rows } = await client.query<{ id: string }>(
      `INSERT INTO photos (id, subject_kind, subject_id, work_order_id, file_hash, title, media_type, added_by, added_at, entry_id)
       SELECT gen_random_uuid(), 'work-order', gen_random_uuid(), gen_random_uuid(), $1, 'A photo', 'image/jpeg', e.person_id, e.at, e.id
       FROM record_entries e ORDER BY e.at DESC LIMIT 1 RETURNING id`,
      [unkept],
    );
    await client.end();
    const without = join(folder, 'without');
    const lost = join(folder, 'lost-files');
    await exportRecords(without, { url: unanchored.url, filesFolder: lost, keys, at: later, verifier: verifierFile });
    await unanchored.drop();
    const { faults } = await verifyFolder(without, { key });
    expect(faults).toContainEqual({
      place: expect.stringMatching(/^signature /),
      reason: expect.stringMatching(/^it is gone; entry /),
    });
    expect(faults).toContainEqual({ place: `file ${hash}`, reason: 'the file is gone' });
    expect(faults).toContainEqual({
      place: `table photos, row ${rows[0]?.id}`,
      reason: `the file ${unkept} it names is not among the kept ones`,
    });
    expect(faults).toHaveLength(3);
  });

  it('made by someone with another key does not pass for the shop of the key that was told', async () => {
    const copy = await copyOf(url);
    const forged = join(folder, 'forged');
    const strangers = new KeyFolder(join(folder, 'strangers'));
    const client = new pg.Client({ connectionString: copy.url });
    await client.connect();
    await client.query(
      'SET session_replication_role = replica; DELETE FROM shop_keys; DELETE FROM anchors; DELETE FROM anchored_heads',
    );
    await client.end();
    await exportRecords(forged, {
      url: copy.url,
      filesFolder: files,
      keys: strangers,
      at: later,
      verifier: verifierFile,
    });
    await copy.drop();
    expect((await verifyFolder(forged)).faults).toEqual([]);
    expect((await verifyFolder(forged, { key })).faults).toEqual([
      { place: `shop key ${key}`, reason: 'the key the shop told is not in this folder' },
    ]);
    const { anchor } = JSON.parse(await readFile(join(exported, 'manifest.json'), 'utf8'));
    expect((await verifyFolder(forged, { anchor })).faults).toEqual([
      { place: `anchor ${anchor.sequence}`, reason: 'the anchor of the earlier export is not in this one' },
    ]);
  });

  it('that breaks off in a line is told, not crashed on', async () => {
    const { faults } = await spoiledFolder((copy) => appendFile(join(copy, 'chains/links.jsonl'), '{"kind":'));
    expect(faults).toContainEqual({ place: 'the folder', reason: expect.stringContaining('chains/links.jsonl, line') });
  });
});
