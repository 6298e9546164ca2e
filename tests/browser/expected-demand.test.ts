import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';
import { looksRight } from '../support/looks.ts';
import { Stockroom } from '../support/stockroom.ts';
import { unitDue } from '../support/unit-due.ts';
import { builtDashboard, pageOf } from '../support/view-page.ts';

/** One kit is in the house, eight little governors come due. */
describe.each([1366, 1180])('what is expected, as the parts clerk at %d', (width) => {
  let room: Stockroom;
  let browser: Browser;
  let clerk: Page;
  const slow = { timeout: 20_000 };

  beforeAll(async () => {
    room = await Stockroom.open({ dashboardFolder: builtDashboard });
    const customer = await room.customer('AHEAD', ['maker-new']);
    const here = await room.kit('HERE-1', customer);
    await room.sql("UPDATE work_orders SET consent = 'approved' WHERE id = $1", [here.workOrderId]);
    await room.onShelf('washer', 3);
    for (let n = 0; n < 8; n += 1)
      await unitDue(room, `OUT-${n}`, {
        customerId: customer,
        dueOn: room.day(15 + 9 * n),
        latest: room.day(40 + 9 * n),
      });
    browser = await openBrowser();
    clerk = await pageOf(browser, room.shop, { signInName: 'caspar', width });
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await room?.close();
  });

  const fits = async () =>
    expect(await clerk.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth')).toBe(0);

  test('stands beside the shortages, and alone only where it is asked for', async () => {
    await clerk.goto('/shortages');
    await clerk.getByRole('heading', { level: 1 }).first().waitFor(slow);
    expect(await clerk.getByRole('row', { name: /TW-10/ }).count()).toBe(0);
    await clerk.getByText('Also what only expected units run short of').click();
    const row = clerk.getByRole('row', { name: /TW-10/ });
    await row.getByText(/expected for 8 units coming due/).waitFor(slow);
    await looksRight(clerk, `expected-shortages-${width}`);
    await fits();
    await row.getByRole('link', { name: /in all/ }).click();
    await clerk.getByRole('heading', { name: /How much TW-10/ }).waitFor(slow);
  }, 90_000);

  test('is told month by month and unit by unit, with the odds', async () => {
    await clerk.getByRole('link', { name: 'VX-TEST OUT-0' }).waitFor(slow);
    await clerk.getByText(/are taken to come here, as is usual/).waitFor(slow);
    await looksRight(clerk, `expected-units-${width}`);
    await fits();
  }, 90_000);

  test('is a step of why so many are bought', async () => {
    await clerk.goto('/buying?search=TS-20');
    const row = clerk.getByRole('row', { name: /TS-20/ });
    await row.waitFor(slow);
    await row.getByText(/^Why \d+\?$/).click();
    const step = row.getByRole('listitem').filter({ hasText: 'coming due' }).first();
    expect(await step.getByRole('link').getAttribute('href')).toBe(`/parts/${room.part('seal')}/expected`);
    await looksRight(clerk, `expected-why-${width}`);
    await fits();
  }, 90_000);

  test('leads from the kit line to the order that serves it, and back', async () => {
    await room.ordered('seal', 1);
    const [kit] = await room.sql("SELECT id, code FROM kits WHERE state = 'open' LIMIT 1");
    await clerk.goto(`/kits/${kit?.id}?sheet=lines`);
    await clerk.getByText('TS-20').first().click();
    await clerk
      .getByRole('link', { name: /^PO-\d+$/ })
      .first()
      .click();
    await clerk.getByRole('heading', { name: 'Which kits wait for it' }).waitFor(slow);
    await clerk.getByRole('link', { name: String(kit?.code) }).waitFor(slow);
  }, 90_000);
});
