import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { setUp } from '../../../../../tests/support/builders.ts';
import { ShopApp } from '../../../../../tests/support/shop-app.ts';
import { Pruning } from './pruning.ts';

describe('pruning', () => {
  let shop: ShopApp;
  let now = new Date('2026-03-01T12:00:00Z');
  beforeAll(async () => {
    shop = await ShopApp.open('empty', { clock: { now: () => now } });
    await setUp(shop);
  });
  afterAll(() => shop.close());

  it('removes old receipts and live events, and never a record', async () => {
    const sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
    await sql.query("UPDATE outbox SET at = '2026-03-01T12:00:00Z'");
    const counts = async () =>
      (
        await sql.query(
          'SELECT (SELECT count(*) FROM receipts)::int AS receipts, (SELECT count(*) FROM outbox)::int AS outbox, (SELECT count(*) FROM record_entries)::int AS entries',
        )
      ).rows[0];
    const pruning = shop.running.app.get(Pruning);
    await pruning.prune();
    expect(await counts()).toEqual({ receipts: 1, outbox: 1, entries: 1 });
    now = new Date('2026-03-05T12:00:00Z');
    await pruning.prune();
    expect(await counts()).toEqual({ receipts: 0, outbox: 0, entries: 1 });
    await sql.end();
  });
});
