// size: one walk told in order; each step stands on the one before

import { addMonths } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Locator, Page } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { looksRight, signsWithPin } from '../support/looks.ts';
import { readBarcodes } from '../support/read-barcodes.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';
import { builtDashboard, pageOf, scan } from '../support/view-page.ts';

/** Part numbers of the walk: nothing of them is in the store, on order, or known at all. */
const partsTable = [
  'part number,maker,description,class,issue unit,pack size,unit price,lead time,bin,shelf life,supplier',
  'PW-1,Vexley,cover washer,hardware,piece,10,0.40,10,B-01,,HARROW',
  'PW-2,Vexley,drive seal,seal,piece,5,6.20,14,A-01,60,HARROW',
  'PW-3,Vexley,speeder spring,mandatory,piece,1,31.00,21,B-02,,HARROW',
];
const kitList = [
  'manual,model,part number,position,scopes,per,quantity,minimum,source,serial from,serial to',
  'TH-TEST-1,VX-TEST,PW-1,cover,governor,unit,4,,new,,',
  'TH-TEST-1,VX-TEST,PW-2,drive,governor,unit,2,,new,,',
  'TH-TEST-1,VX-TEST,PW-3,speeder,governor,unit,1,,new,,',
];
const desk = { width: 1366, height: 768 };
const tablet = { width: 1180, height: 820 };

describe('the parts room, walked from an empty store to empty trays', () => {
  let room: Stockroom;
  let browser: Browser;
  let clerk: Page;
  let inspector: Page;
  let manager: Page;
  let kits: KitOf[] = [];
  const ids: Record<string, string> = {};
  const slow = { timeout: 15_000 };

  beforeAll(async () => {
    room = await Stockroom.open({ dashboardFolder: builtDashboard });
    browser = await openBrowser();
    clerk = await pageOf(browser, room.shop, { signInName: 'caspar', ...desk });
    inspector = await pageOf(browser, room.shop, { signInName: 'inspector', ...desk });
    manager = await pageOf(browser, room.shop, { signInName: 'manager', ...desk });
  }, 120_000);
  afterAll(async () => {
    expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
    await browser?.close();
    await room?.close();
  });

  /** At both widths: no accessibility fault, nothing wider than the window, one line of pages, and a picture kept. */
  async function looks(page: Page, name: string) {
    for (const size of [tablet, desk]) {
      await page.setViewportSize(size);
      await looksRight(page, `walk-${name}-${size.width}`);
      expect(await page.evaluate<number>('document.documentElement.scrollWidth')).toBeLessThanOrEqual(size.width);
      const links = await page.locator('.page-links').boundingBox();
      expect(links?.height ?? 0).toBeLessThan(60);
    }
  }
  const file = (name: string, lines: readonly string[]) => ({
    ...{ name, mimeType: 'text/csv' },
    buffer: Buffer.from(lines.join('\r\n')),
  });
  async function bring(kind: string, lines: readonly string[]) {
    await clerk.goto(`/tables?kind=${kind}`);
    await clerk.locator('input[type=file]').setInputFiles(file(`${kind}.csv`, lines));
  }
  async function take(said: string | RegExp) {
    await clerk.getByRole('button', { name: 'Take the table over' }).click(slow);
    await clerk.getByText(said).first().waitFor(slow);
  }
  /** A governor received at the front desk's screen, with hours nobody knows. */
  async function bookIn(front: Page, serial: string) {
    const pick = async (label: string, text: string) => {
      await front.getByLabel(label, { exact: true }).fill(text);
      await front
        .getByRole('option', { name: new RegExp(text) })
        .first()
        .click(slow);
    };
    await front.goto('/desk/book-in');
    await pick('Customer', 'WALK');
    await pick('Model', 'VX-TEST');
    await front.getByRole('button', { name: 'What is asked for' }).click(slow);
    await front.getByRole('option', { name: 'Governor', exact: true }).click(slow);
    await front.getByLabel('Serial of the unit').fill(serial);
    const hours = front.getByRole('group', { name: 'Hours and cycles of the unit' });
    for (const unknown of ['Since new: unknown', 'Since overhaul: unknown'])
      await hours.getByRole('checkbox', { name: unknown, exact: true }).check({ force: true });
    await front.getByLabel('Reason, in the customer’s words').fill('overhaul due');
    await front.getByRole('button', { name: 'Book it in' }).first().click(slow);
    await front.getByText('is booked in: tag the box with it.').waitFor(slow);
  }
  const dialogOf = (page: Page) => page.getByRole('dialog');
  const cell = async (row: Locator, at: number) =>
    Number(((await row.getByRole('cell').nth(at).textContent()) ?? '').trim());

  /** Pieces that the table of movements in sight says have come into (or gone out of) these places, added up. */
  async function movedInto(page: Page, places: RegExp): Promise<number> {
    await page.getByRole('table', { name: /^Movements of/ }).waitFor(slow);
    const rows = page.getByRole('table', { name: /^Movements of/ }).locator('tbody tr');
    await rows.first().waitFor(slow);
    const heads = await page
      .getByRole('table', { name: /^Movements of/ })
      .locator('th')
      .allInnerTexts();
    const at = (head: string) => heads.findIndex((text) => text.trim().startsWith(head));
    let sum = 0;
    for (const row of await rows.all()) {
      const cells = await row.locator('td, th').allInnerTexts();
      const pieces = Number(cells[at('Pieces')]);
      expect(Number.isInteger(pieces)).toBe(true);
      sum += (places.test(cells[at('To')] ?? '') ? pieces : 0) - (places.test(cells[at('From')] ?? '') ? pieces : 0);
    }
    return sum;
  }
  const store = /^(bin|quarantine)/i;

  /** The part's page says how many there are; the number is a link, and the movements below add up to it. */
  async function haveOf(number: string): Promise<number> {
    await clerk.goto(`/parts/${ids[number]}`);
    const figure = clerk.getByText('Have', { exact: true }).locator('..').getByRole('link');
    const have = Number(await figure.textContent(slow));
    const movements = clerk.getByRole('table', { name: /^Movements of/ });
    const none = clerk.getByText('Nothing has moved yet');
    await movements.or(none).first().waitFor(slow);
    // Nothing of the walk stays in quarantine when it is asked for.
    if (await movements.count()) expect(await movedInto(clerk, store)).toBe(have);
    else expect(have).toBe(0);
    await figure.click(slow);
    await clerk.getByRole('heading', { name: 'What lies where, and may it be used?' }).waitFor(slow);
    if (have === 0) return have;
    const rows = clerk.getByRole('table', { name: 'Lots' }).locator('tbody tr');
    await rows.first().waitFor(slow);
    let there = 0;
    const lots = await rows.count();
    for (let at = 0; at < lots; at += 1) {
      const row = rows.nth(at);
      const pieces = await cell(row, 4);
      there += pieces;
      await row.getByRole('link').first().click(slow);
      await clerk.getByRole('heading', { name: /where is it, and may it be used/ }).waitFor(slow);
      expect(await movedInto(clerk, store)).toBe(pieces);
      await clerk.goBack();
      await rows.first().waitFor(slow);
    }
    expect(there).toBe(have);
    return have;
  }

  test('brings part numbers in: one wrong row stops all of them, mended they come', async () => {
    await bring('parts', [...partsTable, 'PW-4,,no maker,hardware,piece,1,1.00,5,B-01,,']);
    await clerk.getByText('1 row wrong').waitFor(slow);
    await looks(clerk, 'parts-wrong');
    await bring('parts', partsTable);
    await clerk.getByText('0 rows wrong').waitFor(slow);
    await take('Part numbers: 3 new, 0 changed, 0 the same.');
    for (const number of ['PW-1', 'PW-2', 'PW-3'])
      ids[number] = (await room.reads.part.findUniqueOrThrow({ where: { number } })).id;
    await clerk.goto('/parts?search=PW-');
    await clerk.getByRole('row', { name: /PW-3/ }).waitFor(slow);
    await looks(clerk, 'parts');
    for (const number of ['PW-1', 'PW-2', 'PW-3']) expect(await haveOf(number)).toBe(0);
  }, 120_000);

  test('brings the kit list in; an inspector issues it with the manual’s next revision', async () => {
    await bring('kit-lists', kitList);
    await take(/^Kit lists: /);
    await looks(clerk, 'tables');
    await inspector.goto('/manuals?search=TH-TEST-1');
    await inspector.getByRole('link', { name: /TH-TEST-1/ }).click(slow);
    await inspector.getByRole('button', { name: 'Issue with the next revision' }).click(slow);
    await dialogOf(inspector).getByLabel('Revision').fill('2');
    await dialogOf(inspector).getByLabel('Issued on').fill(room.day(-1));
    await looksRight(inspector, 'walk-issue-kit-list');
    await dialogOf(inspector).getByRole('button', { name: 'Make it current' }).click(slow);
    await inspector.getByText(/Revision 2 of TH-TEST-1 is current/).waitFor(slow);
  }, 120_000);

  test('brings its opening stock in, and an inspector accepts it', async () => {
    await bring('opening-stock', ['part number,quantity,bin,supplier lot,certificate', 'PW-1,40,B-01,OLD-1,C-77']);
    await take('Opening stock: 1 new, 0 changed, 0 the same.');
    await inspector.goto('/tables');
    await inspector.getByRole('button', { name: 'Accept 1' }).click(slow);
    await signsWithPin(inspector);
    await inspector.getByText('1 lot accepted.').waitFor(slow);
    expect(await haveOf('PW-1')).toBe(40);
    await looks(clerk, 'stock');
  }, 120_000);

  test('sees next month’s shortages once three governors are in, each traced to its kits', async () => {
    await room.customer('WALK', ['maker-new']);
    const front = await pageOf(browser, room.shop, { signInName: 'desk', ...desk });
    for (const serial of ['W1', 'W2', 'W3']) await bookIn(front, serial);
    await front.context().close();
    const orders = await room.reads.workOrder.findMany({ orderBy: { number: 'asc' } });
    kits = [];
    for (const { id } of orders) kits.push(await room.kitOf(id, 'teardown'));
    expect(kits).toHaveLength(3);
    // Approved: likely work would be bought for by its odds only.
    await room.sql("UPDATE work_orders SET consent = 'approved'");
    for (const { kitId } of kits) {
      await clerk.goto(`/kits/${kitId}`);
      await clerk.getByRole('button', { name: 'Change the date' }).click(slow);
      await dialogOf(clerk).getByLabel('Needed by').fill(room.day(30));
      await dialogOf(clerk).getByRole('button', { name: 'Change the need date' }).click(slow);
      await clerk.getByText(/has a new need date/).waitFor(slow);
    }
    await clerk.goto('/kits');
    await clerk.getByRole('button', { name: /KIT-0001/ }).waitFor(slow);
    await looks(clerk, 'board');
    await clerk.goto('/shortages?search=PW-');
    await clerk.getByRole('row', { name: /PW-2/ }).waitFor(slow);
    await looks(clerk, 'shortages');
    expect(await clerk.getByRole('row', { name: /PW-1/ }).count()).toBe(0);
    for (const [number, short] of [
      ['PW-2', 6],
      ['PW-3', 3],
    ] as const) {
      await clerk.goto('/shortages?search=PW-');
      const row = clerk.getByRole('row', { name: new RegExp(number) });
      await row.getByRole('link', { name: String(short), exact: true }).waitFor(slow);
      // By its kits: one is in sight, the others are behind “and 2 more kit lines”.
      await row.getByText('and 2 more kit lines').click(slow);
      const named = row.getByRole('link', { name: /^KIT-/ });
      expect(await named.count()).toBe(3);
      await named.first().click(slow);
      await clerk.getByRole('heading', { name: new RegExp(number) }).waitFor(slow);
    }
    await looks(clerk, 'kit-line');
  }, 180_000);

  test('orders what is short, and nothing is short any more', async () => {
    await clerk.goto('/buying?search=PW-');
    const row = clerk.getByRole('row', { name: /PW-2/ });
    await row.waitFor(slow);
    await row.getByText('Why 10?').click(slow);
    await looks(clerk, 'buying');
    for (const number of ['PW-2', 'PW-3']) {
      await clerk.goto('/shortages?search=PW-');
      await clerk.getByText(number, { exact: true }).first().click(slow);
      await clerk.getByRole('button', { name: /^Order 1 line from/ }).click(slow);
      await dialogOf(clerk).getByLabel('Due').fill(room.day(20));
      await clerk.getByRole('button', { name: 'Raise the order' }).click(slow);
      await clerk.getByRole('heading', { name: /What has come of PO-/ }).waitFor(slow);
    }
    await looks(clerk, 'order');
    await clerk.goto('/shortages?search=PW-');
    await clerk.getByText('No open kit is short of anything').waitFor(slow);
    await clerk.goto('/orders');
    await clerk.getByRole('link', { name: 'PO-0001' }).waitFor(slow);
    await looks(clerk, 'orders');
    await clerk.goto('/to-chase');
    await clerk.getByRole('heading', { level: 1 }).waitFor(slow);
    await looks(clerk, 'to-chase');
  }, 180_000);

  test('an inspector writes what is looked at when seals come in', async () => {
    await inspector.goto('/receiving-checklists');
    await inspector.getByRole('button', { name: /^Write a checklist: seal$/i }).click(slow);
    await dialogOf(inspector)
      .getByLabel('What is looked at')
      .fill('Sealed in its own bag, cure date on it\nNo nick, flat or bloom');
    await looks(inspector, 'checklist-draft');
    await dialogOf(inspector).getByRole('button', { name: 'Issue revision 1' }).click(slow);
    await inspector.getByText('No nick, flat or bloom').waitFor(slow);
    await looks(inspector, 'checklists');
    await clerk.goto('/receiving-checklists');
    await clerk.getByText('No nick, flat or bloom').waitFor(slow);
    expect(await clerk.getByRole('button', { name: /^Write a checklist/ }).count()).toBe(0);
  }, 60_000);

  /** Opens the expected line of a part and enters what is in the box; answers the code of the new lot. */
  async function receives(number: string, entry: { pieces: string; note: string; cureDate?: string }): Promise<string> {
    await clerk.goto(`/receiving?search=${number}`);
    await clerk
      .getByRole('link', { name: new RegExp(number) })
      .first()
      .click(slow);
    await clerk.getByLabel('How many you counted').fill(entry.pieces);
    await clerk.getByLabel('Delivery note').fill(entry.note);
    await clerk.getByLabel('Supplier’s lot').fill(`L-${entry.note}`);
    await clerk.getByLabel('Certificate').fill(`C-${entry.note}`);
    if (entry.cureDate) await clerk.getByRole('textbox', { name: 'Cure date' }).fill(entry.cureDate);
    await clerk.getByText('maker’s new').click(slow);
    if (number === 'PW-2')
      for (const item of ['Sealed in its own bag, cure date on it', 'No nick, flat or bloom'])
        await clerk.getByRole('radiogroup', { name: item }).getByText('good', { exact: true }).click(slow);
    await clerk.getByRole('button', { name: 'Receive into quarantine' }).click(slow);
    const label = clerk.getByRole('region', { name: /^Label of LOT-/ });
    await label.waitFor(slow);
    return (await label.getAttribute('aria-label'))?.replace('Label of ', '') ?? '';
  }
  /** The inspector scans the bag and accepts it straight into its bin. */
  async function accepts(code: string, bin: string) {
    await inspector.goto(`/find?code=${code}`);
    await inspector.getByRole('button', { name: 'Accept or reject' }).click(slow);
    await inspector.getByText('Accept: it may be used').click(slow);
    await inspector.getByLabel('Straight into bin').fill(bin);
    await inspector.getByRole('button', { name: 'Go on to sign' }).click(slow);
    await signsWithPin(inspector);
    await inspector.getByText(`${code} is accepted.`).waitFor(slow);
  }

  test('receives a part of one order, holds the wrong box of the other, then takes the rest', async () => {
    const some = await receives('PW-2', { pieces: '6', note: 'D1', cureDate: room.day(-40) });
    await clerk.getByRole('button', { name: /A4 sheet/ }).click(slow);
    await clerk.getByRole('option', { name: 'roll, 62 × 29 mm' }).click(slow);
    const label = clerk.getByRole('link', { name: 'Print the label' });
    const paper = await clerk.request.get((await label.getAttribute('href')) ?? '');
    expect(await readBarcodes(await paper.body())).toEqual([some]);
    await looks(clerk, 'received');
    await accepts(some, 'A-01');
    await clerk.goto('/receiving?search=PW-3');
    await clerk.getByRole('link', { name: /PW-3/ }).first().click(slow);
    await clerk.getByRole('button', { name: 'Another part, or too many: hold it' }).click(slow);
    await dialogOf(clerk).getByLabel('What came').fill('PW-2 seals');
    await dialogOf(clerk).getByLabel('How many are held').fill('3');
    await dialogOf(clerk).getByLabel('Delivery note').fill('D2');
    await dialogOf(clerk).getByRole('button', { name: 'Hold it', exact: true }).click(slow);
    await clerk.getByRole('row', { name: /HELD-0001.*3 × PW-2 seals/ }).waitFor(slow);
    await looks(clerk, 'held');
    await clerk.getByRole('button', { name: 'Send back HELD-0001' }).click(slow);
    await dialogOf(clerk).getByLabel('Under which paper').fill('R-5');
    await dialogOf(clerk).getByRole('button', { name: 'It went back' }).click(slow);
    await clerk.getByText('Nothing is held').waitFor(slow);
    expect(await haveOf('PW-3')).toBe(0);
    await accepts(await receives('PW-3', { pieces: '3', note: 'D3' }), 'B-02');
    await accepts(await receives('PW-2', { pieces: '4', note: 'D4', cureDate: room.day(-30) }), 'A-01');
    expect([await haveOf('PW-2'), await haveOf('PW-3')]).toEqual([10, 3]);
    // What has come of the order is its lots, each a link.
    await clerk.goto('/find?code=PO-0001');
    const line = clerk.getByRole('row', { name: /PW-2/ });
    await line.waitFor(slow);
    expect(await line.getByRole('link', { name: /^LOT-/ }).count()).toBe(2);
    await looks(clerk, 'order-come');
    await line.getByRole('link', { name: '10', exact: true }).click(slow);
    expect(await movedInto(clerk, store)).toBe(10);
  }, 240_000);

  test('counts a bin with a discrepancy, which somebody else decides', async () => {
    const lot = await room.reads.lot.findFirstOrThrow({ where: { partId: ids['PW-1'] ?? '' } });
    await clerk.goto('/counts?bin=B-01');
    await clerk.getByRole('button', { name: `Count ${lot.code} in B-01` }).click(slow);
    await dialogOf(clerk).getByLabel('Pieces you counted').fill('31');
    await dialogOf(clerk).getByLabel('Why it was counted').fill('cycle count');
    await dialogOf(clerk).getByRole('button', { name: 'Enter the count' }).click(slow);
    await clerk.getByText('Nothing is changed yet: another person decides about this count.').waitFor(slow);
    await looks(clerk, 'count-waits');
    expect(await haveOf('PW-1')).toBe(40);
    await manager.goto('/counts');
    await manager.getByRole('button', { name: `Decide the count of ${lot.code}` }).click(slow);
    await dialogOf(manager).getByText('Approve: the difference is written').click(slow);
    await dialogOf(manager).getByRole('button', { name: 'Decide', exact: true }).click(slow);
    await manager.getByText('approved', { exact: true }).waitFor(slow);
    expect(await haveOf('PW-1')).toBe(31);
    await clerk.goto('/counts');
    await clerk.getByRole('cell', { name: '9 fewer' }).waitFor(slow);
    await looks(clerk, 'counted');
    await clerk.getByRole('link', { name: lot.code }).first().click(slow);
    expect(await movedInto(clerk, store)).toBe(31);
  }, 180_000);

  test('pulls three kits by scanner, one scan a line', async () => {
    for (const [at, { kitId }] of kits.entries()) {
      await clerk.goto(`/kits/${kitId}`);
      await clerk.getByLabel('Scan a lot into the tray').waitFor(slow);
      for (const number of ['PW-1', 'PW-2', 'PW-3']) {
        const lots = await room.reads.lot.findMany({
          where: { partId: ids[number] ?? '', balances: { some: { placeKind: 'bin', onHand: { gt: 0 } } } },
          orderBy: { receivedAt: 'asc' },
        });
        const [{ code } = { code: '' }] = lots;
        await scan(clerk, code);
        await clerk
          .getByText(new RegExp(`× ${number} for .*: the line is whole`))
          .first()
          .waitFor(slow);
      }
      await clerk.getByText('3 of 3').first().waitFor(slow);
      if (at === 0) await looks(clerk, 'kit-pulled');
      // What is said to be in the tray is what the lot’s own movements brought there.
      await clerk.getByRole('link', { name: /^LOT-/ }).first().click(slow);
      expect(await movedInto(clerk, /^tray/i)).toBeGreaterThan(0);
    }
    expect([await haveOf('PW-1'), await haveOf('PW-2'), await haveOf('PW-3')]).toEqual([19, 4, 0]);
  }, 240_000);

  test('the builders’ trays end at nothing', async () => {
    const builder = await pageOf(browser, room.shop, { signInName: 'tech', ...tablet });
    for (const [at, { workOrderId }] of kits.entries()) {
      await builder.goto(`/build/${workOrderId}`);
      const tray = builder.getByRole('region', { name: 'In the tray' });
      await tray.getByRole('link', { name: /^LOT-/ }).first().waitFor(slow);
      if (at === 0) await looks(builder, 'build-begins');
      for (;;) {
        const left = tray.getByRole('link', { name: /^LOT-/ });
        const codes = await left.allInnerTexts();
        const [code] = codes;
        if (!code) break;
        await scan(builder, code);
        await left.getByText(code).waitFor({ ...slow, state: 'detached' });
      }
      await tray.getByText('the tray is empty').waitFor(slow);
      if (at === 0) await looks(builder, 'tray-empty');
    }
    const trays = await room.reads.balance.aggregate({ where: { placeKind: 'tray' }, _sum: { onHand: true } });
    expect(trays._sum.onHand ?? 0).toBe(0);
  }, 240_000);

  test('what it is all worth, and each amount, lead to the movements', async () => {
    await clerk.goto('/value?search=PW-1');
    const row = clerk.getByRole('row', { name: /PW-1/ });
    // 19 washers at 0.40.
    await row.getByRole('link', { name: /7\.60/ }).first().waitFor(slow);
    await looks(clerk, 'value');
    await row.getByRole('link', { name: '19', exact: true }).click(slow);
    expect(await movedInto(clerk, store)).toBe(19);
    await clerk.goto('/value?search=PW-1');
    // Twelve washers of 0.40 went into kits; nine were missed.
    await row.getByRole('link', { name: /4\.80/ }).click(slow);
    expect(await movedInto(clerk, store)).toBe(-12);
    await clerk.goto('/value?search=PW-1');
    await row.getByRole('link', { name: /3\.60/ }).click(slow);
    expect(await movedInto(clerk, store)).toBe(-9);
    await looks(clerk, 'movements');
    await clerk.goto('/value?search=PW-1');
    // What one washer is worth is told by what came and went, the newest first.
    await row.getByRole('link', { name: '$0.40', exact: true }).click(slow);
    await clerk.getByRole('heading', { name: /How did what each PW-1 is worth come about/ }).waitFor(slow);
    const newest = clerk.getByRole('table', { name: /PW-1/ }).locator('tbody tr').first();
    expect(await newest.textContent(slow)).toContain('$0.40');
    await looks(clerk, 'average');
  }, 120_000);

  test('what is used and missed is told of the time that is chosen, and its links keep it', async () => {
    await clerk.goto('/value?search=PW-1');
    const used = clerk.getByRole('row', { name: /PW-1/ }).getByRole('link', { name: /4\.80/ });
    const since = async () => new URL((await used.getAttribute('href', slow)) ?? '', room.shop.address).searchParams;
    const aYear = (await since()).get('since');
    await clerk.getByRole('button', { name: 'Used and missed in' }).click(slow);
    await clerk.getByRole('option', { name: 'a month', exact: true }).click(slow);
    await clerk.waitForURL(/time=1(&|$)/);
    const aMonth = addMonths(room.day(0), -1);
    await clerk.locator(`a[href*="since=${aMonth}"]`).first().waitFor(slow);
    expect([aYear, (await since()).get('since')]).toEqual([addMonths(room.day(0), -12), aMonth]);
  }, 120_000);

  test.each(['kits-to-fill', 'suppliers', 'outside-work', 'places', 'expiring', 'receiving'])(
    '%s looks right too',
    async (path) => {
      await clerk.goto(`/${path}`);
      await clerk.getByRole('heading', { level: 1 }).waitFor(slow);
      await clerk.waitForLoadState('networkidle').catch(() => undefined);
      await looks(clerk, path);
    },
    60_000,
  );
});
