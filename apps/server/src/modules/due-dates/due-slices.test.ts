import { afterEach, beforeEach, describe, expect, it, jest } from '@jest/globals';
import { Logger } from '@nestjs/common';
import pg from 'pg';
import { ShopApp } from '../../../../../tests/support/shop-app.ts';
import { KeptDue } from './public.ts';

/** More than are worked out in the server itself, and no whole number of batches. */
const many = 2_345;

describe('the due dates of a large shop are worked out beside the server', () => {
  let shop: ShopApp;
  const sql = async <Row extends pg.QueryResultRow>(text: string) => {
    const client = new pg.Client({ connectionString: shop.databaseUrl });
    await client.connect();
    return (await client.query<Row>(text).finally(() => client.end())).rows;
  };

  beforeEach(async () => {
    shop = await ShopApp.open('shop');
    await sql(`INSERT INTO serialized_items (id, kind, model_id, maker, part_number, serial, created_at)
      SELECT gen_random_uuid(), 'assembly', m.id, 'Quillon', m.designation, 'MANY' || n, now()
      FROM (SELECT id, designation FROM unit_models ORDER BY designation LIMIT 1) m, generate_series(1, ${many}) n`);
  }, 120_000);
  afterEach(() => shop.close());

  it('every unit once, as they would be here, and how far it is can be seen', async () => {
    const kept = shop.running.app.get(KeptDue);
    const run = kept.whole();
    const seen = new Set<number>();
    for (let ended = false; !ended; ) {
      const state = await kept.state();
      if (state.running) seen.add(state.running.done);
      ended = await Promise.race([run.then(() => true), new Promise<false>((next) => setTimeout(next, 20, false))]);
    }
    const [count] = await sql<{ units: number; kept: number }>(
      `SELECT count(*)::int AS units, count(d.unit_id)::int AS kept FROM serialized_items u
       LEFT JOIN unit_due d ON d.unit_id = u.id WHERE u.kind = 'assembly' AND u.joined_into_id IS NULL`,
    );
    expect(count).toEqual({ units: many, kept: many });
    expect([...seen]).toContain(2_000);
    const basis = await sql(
      'SELECT DISTINCT d.basis FROM unit_due d JOIN serialized_items u ON u.id = d.unit_id AND u.serial LIKE $$MANY%$$',
    );
    expect(basis).toEqual([{ basis: 'No overhaul with its date is on record, so nothing is counted from it' }]);
  }, 60_000);

  it('a server that ends early ends it first, and complains of nothing', async () => {
    const warned = jest.spyOn(Logger.prototype, 'warn');
    const kept = shop.running.app.get(KeptDue);
    const run = kept.whole();
    await new Promise((resolve) => setTimeout(resolve, 400));
    await shop.running.close();
    await run.catch(() => undefined);
    expect(warned.mock.calls).toEqual([]);
    // Its statement of the moment ends before the database notices that nobody waits for it.
    const left = () =>
      sql(`SELECT query FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()
        AND backend_type = 'client backend'`);
    for (let n = 0; n < 50 && (await left()).length > 0; n += 1) await new Promise((next) => setTimeout(next, 100));
    expect(await left()).toEqual([]);
    warned.mockRestore();
  }, 60_000);
});
