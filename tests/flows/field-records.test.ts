import { cp, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { exportRecords } from '../../apps/server/src/platform/records/export.ts';
import { KeyFolder } from '../../apps/server/src/platform/records/shop-key.ts';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { verifyFolder } from '../../apps/server/src/platform/records/verify-folder.ts';
import { copyOf } from '../support/database.ts';
import { FieldOrder } from '../support/field-order.ts';
import { installed } from '../support/on-aircraft.ts';
import { ShopApp } from '../support/shop-app.ts';

/** What was signed at the aircraft is checked like any other signature; tests spoil copies of one shop. */
describe('the signatures of a balance on the aircraft', () => {
  let shop: ShopApp;
  let order: FieldOrder;
  let ids: Record<string, string>;
  const files = () => join(shop.dataFolder, 'files');
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    order = await FieldOrder.planned(shop, await installed(shop, 'F7301'));
    await order.setUp();
    await order.baseline();
    await order.balanced();
    await order.released();
    await shop.running.close();
    const client = new pg.Client({ connectionString: shop.databaseUrl });
    await client.connect();
    const { rows } = await client.query<{ kind: string; id: string }>('SELECT kind, id FROM field_signatures');
    await client.end();
    ids = Object.fromEntries(rows.map(({ kind, id }) => [kind, id]));
  }, 180_000);
  afterAll(() => shop.close());

  /** Runs statements as someone who owns the database and switches its guards off. */
  async function spoiled(...statements: string[]) {
    const copy = await copyOf(shop.databaseUrl);
    const client = new pg.Client({ connectionString: copy.url });
    await client.connect();
    try {
      await client.query('SET session_replication_role = replica');
      for (const statement of statements) await client.query(statement);
      return await verifyDatabase(copy.url, files());
    } finally {
      await client.end();
      await copy.drop();
    }
  }

  it('hold as they were signed, and are counted with the others', async () => {
    const report = await spoiled();
    expect(report.faults).toEqual([]);
    const without = await spoiled(
      'DELETE FROM field_signatures',
      `UPDATE record_entries SET body = replace(body, '"signOffs":[', '"x":[') WHERE command LIKE '%field%'`,
    );
    expect(report.signOffs - without.signOffs).toBe(3);
  });

  it.each([
    [
      'a reading put lower',
      `content = jsonb_set(content, '{after,0,amplitude}', '"0.01"') WHERE kind = 'balanced'`,
      'what was signed is not what its hash says',
    ],
    [
      'a sheet that names another procedure',
      `content = jsonb_set(content, '{sheet,procedure}', '"Other"') WHERE kind = 'set-up'`,
      'what was signed is not what its hash says',
    ],
    [
      'a content exchanged with its hash',
      `(content, content_hash) = (SELECT content, content_hash FROM field_signatures WHERE kind = 'set-up') WHERE kind = 'balanced'`,
      'the record entry names another content',
    ],
    [
      'a signature moved to another entry',
      `entry_id = (SELECT entry_id FROM sign_offs LIMIT 1) WHERE kind = 'released'`,
      'the record entry does not name this signature',
    ],
  ])('name %s, before any anchor has seen it', async (_, change, reason) => {
    const kind = /kind = '([a-z-]+)'$/.exec(change)?.[1] ?? '';
    const { faults } = await spoiled(`UPDATE field_signatures SET ${change}`);
    expect(faults).toContainEqual({ place: `signature ${ids[kind]}`, reason });
  });

  it('name one that is gone', async () => {
    const { faults } = await spoiled(`DELETE FROM field_signatures WHERE kind = 'balanced'`);
    expect(faults).toEqual([
      {
        place: `signature ${ids.balanced}`,
        reason: expect.stringMatching(/^it is gone; entry [0-9a-f-]{36} names it$/),
      },
    ]);
  });

  it('hold by the hash among the facts where an older entry names no signature, and are named when it is another', async () => {
    // An entry as it was written before: the chain itself no longer fits, which is named beside.
    const older = (body: string) => `UPDATE record_entries SET body = ${body} WHERE command = 'sign-field-balance'`;
    const unnamed = `((body::jsonb #- '{signed,signOffs}')::text)`;
    const places = async (body: string) => (await spoiled(older(body))).faults.map(({ place }) => place);
    expect(await places(unnamed)).not.toContain(`signature ${ids.balanced}`);
    const otherHash = `(jsonb_set(body::jsonb #- '{signed,signOffs}', '{facts,contentHash}', '"00"')::text)`;
    expect(await places(otherHash)).toContain(`signature ${ids.balanced}`);
  });

  it('are checked in an export too, by its rows alone', async () => {
    const folder = join(shop.dataFolder, 'export');
    const keys = new KeyFolder(join(shop.dataFolder, 'keys'));
    const verifier = fileURLToPath(import.meta.url); // any file: it is not run here
    const at = new Date(Date.now() + 60_000);
    await exportRecords(folder, { url: shop.databaseUrl, filesFolder: files(), keys, at, verifier });
    expect((await verifyFolder(folder)).faults).toEqual([]);
    const changed = join(shop.dataFolder, 'changed');
    await cp(folder, changed, { recursive: true });
    const rows = join(changed, 'rows', 'field_signatures.jsonl');
    await writeFile(rows, (await readFile(rows, 'utf8')).replace('0.05', '0.01'));
    const { faults } = await verifyFolder(changed);
    await rm(changed, { recursive: true });
    expect(faults).toContainEqual({
      place: `signature ${ids.balanced}`,
      reason: 'what was signed is not what its hash says',
    });
  });
});
