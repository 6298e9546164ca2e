import { join } from 'node:path';
import { fieldBalanceOperations as op } from '@hubwright/contracts/field-balance/operations';
import { addDays, addMonths } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { listPurgeable, purgeOrder } from '../../apps/server/src/modules/records/purge-order.ts';
import { asServer } from '../../apps/server/src/platform/database/server-role.ts';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { FieldOrder } from '../support/field-order.ts';
import { installed, weightsOnShelf } from '../support/on-aircraft.ts';
import { ShopApp } from '../support/shop-app.ts';

/** A balance is approved for return to service by itself, so its records have a time of their own. */
describe('records of a balance on the aircraft whose time has run', () => {
  let shop: ShopApp;
  let order: FieldOrder;
  let abandoned: FieldOrder;
  let approvedOn: string;
  const sql = async (text: string, url = shop.databaseUrl) => {
    const client = new pg.Client({ connectionString: url });
    await client.connect();
    try {
      return (await client.query(text)).rows;
    } finally {
      await client.end();
    }
  };
  const purgeOn = (today: string, number: string) =>
    purgeOrder(
      { url: shop.databaseUrl, dataFolder: shop.dataFolder },
      { number, by: 'admin', today, at: new Date(`${today}T12:00:00.000Z`) },
    );
  const kept = async (id = order.id) =>
    (
      await sql(
        `SELECT (SELECT count(*) FROM field_signatures WHERE field_balance_id = '${id}')::int AS signatures,
           (SELECT count(*) FROM field_runs WHERE field_balance_id = '${id}')::int AS runs,
           (SELECT count(*) FROM field_weights WHERE field_balance_id = '${id}')::int AS weights,
           (SELECT count(*) FROM record_links WHERE subject_kind = 'field-balance' AND subject_id = '${id}')::int AS entries`,
      )
    )[0];
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    const job = await installed(shop, 'F7401');
    const lot = await weightsOnShelf(job, 'Q-DW-W1', 5);
    abandoned = await FieldOrder.planned(shop, job);
    await abandoned.setUp();
    await abandoned.abandoned();
    order = await FieldOrder.planned(shop, job);
    await order.setUp();
    await order.baseline();
    await order.weighted('H1', lot);
    const supersedesId = (await order.detail()).runs.at(-1)?.id;
    const readings = [{ rpm: 2_300, amplitude: '0.06', phase: '44' }];
    const right = { kind: 'check', readings, supersedesId, reason: 'Read in the wrong column' };
    expect((await order.ask(op.recordFieldRun, right)).status).toBe(200);
    await order.balanced();
    await sql(
      `UPDATE shop_profile SET retention_rules = '[{"approval":"one authority","years":2},{"approval":"another","years":3}]'`,
    );
  }, 180_000);
  afterAll(() => shop.close());

  it('are kept while the order is open, whatever the day', async () => {
    await expect(purgeOn('2090-01-01', order.number)).rejects.toThrow('not a balance that ended');
    await order.released();
    const [signed] = await sql(
      `SELECT (signed_at AT TIME ZONE (SELECT zone FROM shop_profile))::date::text AS day FROM field_signatures WHERE kind = 'released'`,
    );
    approvedOn = signed.day;
    expect(await kept()).toEqual({ signatures: 3, runs: 3, weights: 1, entries: 8 });
  });

  it('are kept to the last day of the longest rule', async () => {
    const lastDay = addMonths(approvedOn, 36);
    await expect(purgeOn(lastDay, order.number)).rejects.toThrow(`are kept until ${addDays(lastDay, 1)}`);
    expect(await listPurgeable(shop.databaseUrl, lastDay)).toEqual([]);
  });

  it('cannot be destroyed by the running server, nor by the owner without the role', async () => {
    for (const url of [asServer(shop.databaseUrl), shop.databaseUrl])
      for (const table of ['field_weights', 'field_runs', 'field_signatures'])
        await expect(sql(`DELETE FROM ${table}`, url)).rejects.toThrow(/permission denied|only added/i);
    await expect(sql(`UPDATE field_signatures SET meaning = 'x'`)).rejects.toThrow(/only added/i);
  });

  it('go the day after with a signed proof that every check accepts; the other order stays', async () => {
    const today = addDays(addMonths(approvedOn, 36), 1);
    const { id, number } = order;
    const listed = await listPurgeable(shop.databaseUrl, today);
    expect(listed.map((one) => [one.kind, one.number])).toEqual([
      ['balance on the aircraft', abandoned.number],
      ['balance on the aircraft', number],
    ]);
    const proof = await purgeOn(today, number);
    expect(proof).toMatchObject({ what: `balance on the aircraft ${number}`, files: [] });
    expect(proof.chains.map(({ kind, id: of }) => [kind, of])).toEqual([['field-balance', id]]);
    expect(await kept()).toEqual({ signatures: 0, runs: 0, weights: 0, entries: 0 });
    expect(await kept(abandoned.id)).toEqual({ signatures: 1, runs: 0, weights: 0, entries: 3 });
    expect((await verifyDatabase(shop.databaseUrl, join(shop.dataFolder, 'files'))).faults).toEqual([]);
    expect((await listPurgeable(shop.databaseUrl, today)).map((one) => one.number)).toEqual([abandoned.number]);
  });

  it('leave a line that says they are gone, not that nothing stands on the propeller', async () => {
    const left = await order.detail();
    expect(left).toMatchObject({ number: order.number, state: 'released', purged: true, released: null, runs: [] });
    const pdf = await order.people.inspector.send('GET', `/api/field-balances/${order.id}/record.pdf`);
    expect(pdf.status).toBe(404);
    expect(await abandoned.detail()).toMatchObject({ state: 'abandoned', purged: false });
  });

  it('of an order that was abandoned go too, counted from its end', async () => {
    const today = addDays(addMonths(approvedOn, 36), 1);
    await purgeOn(today, abandoned.number);
    expect(await kept(abandoned.id)).toEqual({ signatures: 0, runs: 0, weights: 0, entries: 0 });
    expect((await verifyDatabase(shop.databaseUrl, join(shop.dataFolder, 'files'))).faults).toEqual([]);
    expect(await abandoned.detail()).toMatchObject({ purged: true, abandoned: 'The aircraft was sold' });
  });
});
