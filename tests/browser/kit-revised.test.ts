import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { looksRight } from '../support/looks.ts';
import { as, pin } from '../support/people.ts';
import { firstList, type KitOf, Stockroom } from '../support/stockroom.ts';
import { builtDashboard, pageOf, scan } from '../support/view-page.ts';

/** One washer of two and the seal are in the tray when the next revision asks for one washer, another seal and a second bushing. */
describe('a kit list that a revision changes while the kit is half pulled', () => {
  let room: Stockroom;
  let browser: Browser;
  let clerk: Page;
  let kit: KitOf;
  let lots: Record<'washer' | 'seal' | 'other seal', { id: string; code: string }>;
  const slow = { timeout: 15_000 };
  beforeAll(async () => {
    room = await Stockroom.open({ dashboardFolder: builtDashboard });
    lots = {
      washer: await room.onShelf('washer', 10),
      seal: await room.onShelf('seal', 2, { bin: 'A-01' }),
      'other seal': await room.onShelf('other seal', 2, { bin: 'A-01' }),
    };
    kit = await room.kit('KR-1', await room.customer('REVISED', ['maker-new']));
    await room.issue(kit, lots.washer.code);
    await room.issue(kit, lots.seal.code);
    await room.revised([
      ...firstList.filter(({ position }) => !['cover', 'drive'].includes(position)),
      { part: 'washer', position: 'cover', quantity: 1, source: 'new' },
      { part: 'other seal', position: 'drive', quantity: 1, source: 'new' },
    ]);
    const inspector = await as(room.shop, 'inspector');
    const { version } = await room.reads.workOrder.findUniqueOrThrow({ where: { id: kit.workOrderId } });
    const input = { workOrderId: kit.workOrderId, signature: pin };
    expect((await inspector.call(travelerOperations.rebaseRevision, input, { version })).status).toBe(200);
    browser = await openBrowser();
    clerk = await pageOf(browser, room.shop, { signInName: 'caspar' });
  }, 120_000);
  afterAll(async () => {
    expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
    await browser?.close();
    await room?.close();
  });

  const differences = () => clerk.getByRole('table', { name: /^Differences of KIT-/ });

  test('says what to bring back and what to pull instead', async () => {
    await clerk.goto(`/kits/${kit.kitId}`);
    await differences().waitFor(slow);
    const rows = await differences().locator('tbody tr').allTextContents();
    expect(rows.map((row) => row.replaceAll(/\s+/g, ' ')).toSorted()).toEqual([
      expect.stringMatching(new RegExp(`bring back.*1.*TS-20.*drive.*${lots.seal.code}`)),
      expect.stringMatching(new RegExp(`bring back.*1.*TW-10.*cover.*${lots.washer.code}`)),
      expect.stringMatching(/pull.*1.*TS-21.*drive/),
      expect.stringMatching(/pull.*40.*TX-50.*safety/),
    ]);
    for (const [width, height] of [
      [1180, 820],
      [1366, 768],
    ] as const) {
      await clerk.setViewportSize({ width, height });
      await looksRight(clerk, `kit-revised-${width}`);
    }
  }, 60_000);

  test('both go back to their bins and the other seal comes by one scan; nothing differs any more', async () => {
    for (const name of ['washer', 'seal'] as const) {
      await differences()
        .getByRole('button', { name: `Bring back 1 of ${lots[name].code}` })
        .click(slow);
      await clerk.getByRole('dialog').getByRole('button', { name: 'Bring back to the bin' }).click(slow);
      await clerk.getByRole('dialog').waitFor({ ...slow, state: 'detached' });
    }
    const left = differences().locator('tbody tr');
    await left
      .filter({ hasText: 'bring back' })
      .first()
      .waitFor({ ...slow, state: 'detached' });
    expect(await left.allTextContents()).toEqual([expect.stringMatching(/pull.*TS-21.*drive/)]);
    await scan(clerk, lots['other seal'].code);
    await clerk
      .getByText(/1 × TS-21 for drive: the line is whole/)
      .first()
      .waitFor(slow);
    await differences().waitFor({ ...slow, state: 'detached' });
    expect(await room.places(lots.washer.id)).toEqual({ 'bin B-01': 9, tray: 1 });
    expect(await room.places(lots.seal.id)).toEqual({ 'bin A-01': 2 });
    expect(await room.places(lots['other seal'].id)).toEqual({ 'bin A-01': 1, tray: 1 });
    await looksRight(clerk, 'kit-revised-mended');
  }, 60_000);
});
