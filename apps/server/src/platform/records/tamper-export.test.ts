import { execFile } from 'node:child_process';
import { appendFile, cp, readFile, rm, truncate, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { copyOf, type TestDatabase } from '../../../../../tests/support/database.ts';
import { later, type SpoilableShop, spoilableShop } from '../../../../../tests/support/spoilable-shop.ts';
import { ensureBuilt } from '../../../prepare.mjs';
import { verifierFile } from '../../settings.ts';
import { exportRecords } from './export.ts';
import { KeyFolder } from './shop-key.ts';
import { verifyFolder } from './verify-folder.ts';

let shop: SpoilableShop;
let url: string;
let files: string;
let keys: KeyFolder;
let folder: string;
let hash: string;
let unanchored: TestDatabase;
beforeAll(async () => {
  ensureBuilt();
  shop = await spoilableShop();
  ({ url, files, keys, folder, hash, unanchored } = shop);
}, 120_000);
afterAll(() => shop?.remove());

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
