import { readFile, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { append, canonicalJson } from '@hubwright/rules/chain';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { copyOf } from '../../../../../tests/support/database.ts';
import { later, type SpoilableShop, spoilableShop } from '../../../../../tests/support/spoilable-shop.ts';
import { introduce, KeyFolder, makeKey, signText } from './shop-key.ts';
import { takeAnchor } from './take-anchor.ts';
import { verifyDatabase } from './verify-database.ts';

let shop: SpoilableShop;
let url: string;
let files: string;
let keys: KeyFolder;
let folder: string;
let lotId: string;
let hash: string;
beforeAll(async () => {
  shop = await spoilableShop();
  ({ url, files, keys, folder, lotId, hash } = shop);
}, 120_000);
afterAll(() => shop?.remove());

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
