import { createHash, randomUUID } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { demoPassword, smallestShop } from '../support/builders.ts';
import { jpeg, sendFile } from '../support/pictures.ts';
import { ServerProcess } from '../support/server-process.ts';

const kills = Number(process.env.KILLS ?? 6);

describe('the power goes while files are sent', () => {
  let server: ServerProcess;
  let cookie = '';
  beforeAll(async () => {
    server = await ServerProcess.inFreshFolder();
    await server.start();
    await post('/api/set-up', smallestShop);
    cookie = await signIn('first');
    const technician = { signInName: 'tech', displayName: 'The technician', initials: 'T', roles: ['technician'] };
    await post('/api/people', { ...technician, password: demoPassword });
    cookie = await signIn('tech');
  }, 120_000);
  afterAll(() => server.discard(), 30_000);

  const post = (path: string, body: unknown) =>
    fetch(server.address + path, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'idempotency-key': randomUUID(), cookie },
      body: JSON.stringify(body),
    });
  const signIn = async (signInName: string) =>
    (await post('/api/session', { signInName, password: demoPassword })).headers.getSetCookie()[0]?.split(';')[0] ?? '';
  const rows = async () => {
    const client = new pg.Client({ connectionString: await server.databaseUrl() });
    await client.connect();
    try {
      return (await client.query('SELECT hash, size, thumbnail_hash, thumbnail_size FROM staged_files')).rows;
    } finally {
      await client.end();
    }
  };

  it(`every row names a whole file, and what was acknowledged is there, over ${kills} kills`, async () => {
    const acknowledged = new Set<string>();
    const pictures = await Promise.all(['#111111', '#555555', '#999999'].map((colour) => jpeg(1_600, 1_200, colour)));
    for (let round = 0; round < kills; round += 1) {
      let going = true;
      const senders = pictures.map(async (bytes) => {
        // Other bytes each time, so that each round has files of its own to lose.
        for (let count = 0; going; count += 1) {
          const own = Buffer.concat([bytes.subarray(0, 2), comment(`${round} ${count}`), bytes.subarray(2)]);
          const answer = await sendFile(server, { cookie }, { bytes: own }).catch(() => undefined);
          if (answer?.status === 200) acknowledged.add(String(answer.body.hash));
          else return;
        }
      });
      await wait(400 + Math.random() * 900);
      await server.kill();
      going = false;
      await Promise.all(senders);
      await server.start();
    }
    const staged = await rows();
    const named = staged.flatMap((row) => [
      { hash: row.hash, size: row.size },
      { hash: row.thumbnail_hash, size: row.thumbnail_size },
    ]);
    expect(acknowledged.size).toBeGreaterThan(0);
    expect([...acknowledged].filter((hash) => !named.some((row) => row.hash === hash))).toEqual([]);
    for (const { hash, size } of named) expect(await onDisk(hash)).toEqual({ hash, size });
    expect((await verifyDatabase(await server.databaseUrl(), join(server.folder, 'files'))).faults).toEqual([]);
    const entries = await readdir(join(server.folder, 'files'), { recursive: true, withFileTypes: true });
    const kept = entries.filter((entry) => entry.isFile() && !entry.parentPath.includes('incoming'));
    for (const { name } of kept) expect((await onDisk(name)).hash).toBe(name);
  }, 240_000);

  async function onDisk(hash: string): Promise<{ hash: string; size: number }> {
    const bytes = await readFile(join(server.folder, 'files', hash.slice(0, 2), hash));
    return { hash: createHash('sha256').update(bytes).digest('hex'), size: bytes.length };
  }
});

/** A JPEG comment (ITU-T T.81, B.2.4.5): changes the file and not the picture. */
function comment(text: string): Buffer {
  const head = Buffer.from([0xff, 0xfe, 0, text.length + 2]);
  return Buffer.concat([head, Buffer.from(text, 'latin1')]);
}
