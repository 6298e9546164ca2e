import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';
import { Stockroom } from '../support/stockroom.ts';
import { builtDashboard, pageOf } from '../support/view-page.ts';

/** More rows than two pages of every list: copies written past the commands, since only the lists are looked at. */
const copies = 230;

describe('what leaves as a file', () => {
  let room: Stockroom;
  let browser: Browser;
  let clerk: Page;
  const slow = { timeout: 20_000 };
  /** Rows of a table over again, each with other values in some columns. */
  const copy = (table: string, where: string, changed: string) =>
    room.sql(
      `INSERT INTO ${table} SELECT (jsonb_populate_record(t, jsonb_build_object(${changed}))).*
        FROM ${table} t, generate_series(1, ${copies}) n WHERE ${where}`,
    );
  const count = async (sql: string) => Number((await room.sql(`SELECT count(*) AS n ${sql}`))[0]?.n);

  beforeAll(async () => {
    room = await Stockroom.open({ dashboardFolder: builtDashboard });
    const lot = await room.onShelf('washer', 3);
    await room.kit('WHOLE-1', await room.customer('WHOLE', ['maker-new']));
    const newId = "'id', gen_random_uuid()";
    await copy('parts', "number = 'TW-10'", `${newId}, 'number', 'ZX-' || n`);
    await copy('kits', 'true', `${newId}, 'code', 'KIT-9' || lpad(n::text, 3, '0')`);
    await copy(
      'lots',
      `id = '${lot.id}'`,
      `${newId}, 'code', 'LOT-9' || lpad(n::text, 3, '0'), 'received_at', now() - interval '2 years'`,
    );
    await room.sql(
      `INSERT INTO balances SELECT (jsonb_populate_record(b, jsonb_build_object('lot_id', l.id))).*
        FROM balances b, lots l WHERE b.lot_id = '${lot.id}' AND b.place_kind = 'bin' AND l.code LIKE 'LOT-9%'`,
    );
    browser = await openBrowser();
    clerk = await pageOf(browser, room.shop, { signInName: 'caspar' });
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await room?.close();
  });

  /** The first column of the file that the page’s first export gives, in its own order. */
  async function exported(address: string): Promise<{ name: string; keys: string[] }> {
    await clerk.goto(address);
    const button = clerk.getByRole('button', { name: 'Export CSV' }).first();
    await button.waitFor(slow);
    const download = clerk.waitForEvent('download', { timeout: 30_000 });
    await button.click(slow);
    const file = await download;
    const text = await readFile(await file.path(), 'utf8');
    const [, ...lines] = text.trim().split('\r\n');
    return { name: file.suggestedFilename(), keys: lines.map((line) => line.split(',')[0] ?? '') };
  }

  test.each([
    ['part numbers', '/parts', 'FROM parts', 'part-numbers.csv'],
    ['lots', '/stock', 'FROM lots', 'lots.csv'],
    ['kits of the board', '/kits', "FROM kits WHERE state = 'open'", 'kits.csv'],
    ['counts due', '/counts', "FROM lots WHERE code LIKE 'LOT-9%'", 'counts-that-are-due.csv'],
  ])(
    '%s: the whole list, not the page in sight, each row once',
    async (_, address, rows, name) => {
      const all = await count(rows);
      expect(all).toBeGreaterThan(200);
      const file = await exported(address);
      expect(file.name).toBe(name);
      expect(file.keys).toHaveLength(all);
    },
    90_000,
  );

  test('a list says how much of it is in sight, and reads on', async () => {
    await clerk.goto('/kits');
    await clerk.getByText('the first 100 kits').waitFor(slow);
    await clerk.getByRole('button', { name: 'Show more' }).click(slow);
    await clerk.getByText('the first 200 kits').waitFor(slow);
  }, 60_000);
});
