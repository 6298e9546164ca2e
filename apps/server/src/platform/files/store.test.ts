import { createHash } from 'node:crypto';
import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { freshDatabase, type TestDatabase } from '../../../../../tests/support/database.ts';
import { Database, type Tx } from '../database/client.ts';
import { FolderFileStore } from './store.ts';

const now = new Date('2026-11-25T12:00:00.000Z');
const paper = { bytes: Buffer.from('abc'), mediaType: 'text/plain', title: 'Three letters' };
// FIPS 180-4 example: SHA-256 of "abc".
const hashOfAbc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';

describe('stored files', () => {
  let folder: string;
  let database: Database;
  let fresh: TestDatabase;
  let store: FolderFileStore;
  const keep = (file = paper) => database.prisma.$transaction((tx: Tx) => store.put({ tx, now }, file));

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'hubwright-files-'));
    fresh = await freshDatabase();
    database = new Database(fresh.url);
    store = new FolderFileStore(folder);
  });
  afterAll(async () => {
    await database.close();
    await fresh.drop();
    await rm(folder, { recursive: true, force: true });
  });

  it('are named by the hash of their bytes and read back as they were', async () => {
    expect(await keep()).toBe(hashOfAbc);
    expect((await store.read(hashOfAbc)).toString()).toBe('abc');
    expect((await buffer(await store.open(hashOfAbc))).toString()).toBe('abc');
    expect(await database.prisma.storedFile.findUnique({ where: { hash: hashOfAbc } })).toMatchObject({
      size: 3,
      mediaType: 'text/plain',
    });
  });

  it('are kept once, also when two keep the same bytes at the same time', async () => {
    await Promise.all([keep(), keep(), keep()]);
    expect(await readdir(join(folder, hashOfAbc.slice(0, 2)))).toEqual([hashOfAbc]);
    expect(await database.prisma.storedFile.count()).toBe(1);
  });

  it('refuse to be read once a byte of them was changed', async () => {
    const file = { ...paper, bytes: Buffer.from('to be changed') };
    const hash = await keep(file);
    await writeFile(join(folder, hash.slice(0, 2), hash), 'to be changeD');
    await expect(store.read(hash)).rejects.toMatchObject({ type: 'file-damaged' });
  });

  it.each(['../../etc/passwd', '', 'ABC', createHash('sha256').update('never kept').digest('hex')])(
    'are not found by the name %p',
    async (name) => {
      await expect(store.read(name)).rejects.toMatchObject({ type: 'not-found' });
      await expect(store.open(name)).rejects.toMatchObject({ type: 'not-found' });
    },
  );
});
