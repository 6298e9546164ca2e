import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { issueLot } from '../../apps/server/src/modules/kits/issue-lot.command.ts';
import { demoPin } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { Job } from '../support/job.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { looksRight } from '../support/looks.ts';
import { ShopApp } from '../support/shop-app.ts';
import { builtDashboard, pageOf, scan } from '../support/view-page.ts';

/** A reseal whose seals are in the tray already, and then the customer wants the overhaul. */
describe('a second scope added while the kit of the first is pulled', () => {
  let shop: ShopApp;
  let browser: Browser;
  let clerk: Page;
  let inspector: Page;
  let job: Job;
  let firstLines = 0;
  const slow = { timeout: 20_000 };
  const linesToPull = () =>
    job.reads.kitLine.findMany({
      where: { kitId: job.kitId, source: 'new', quantity: { gt: 0 }, askedLaterAt: { not: null } },
      include: { part: true },
      orderBy: { sequence: 'asc' },
    });
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    job = await Job.arrived(shop, '4901', { scope: 'reseal' });
    await job.inWork();
    const lines = await job.reads.kitLine.findMany({ where: { kitId: job.kitId } });
    firstLines = lines.length;
    for (const { id: lineId, partId, quantity, source } of lines) {
      if (source !== 'new') continue;
      const lotCode = await job.onShelf(partId, quantity);
      await shop.run(issueLot, { kitId: job.kitId, lineId, lotCode, quantity }, job.people.clerk);
    }
    browser = await openBrowser();
    clerk = await pageOf(browser, shop, { signInName: 'parts' });
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
  }, 180_000);
  afterAll(async () => {
    expect(await ledgerFaults(shop.databaseUrl)).toEqual([]);
    await browser?.close();
    await shop?.close();
  });
  const differences = () => clerk.getByRole('table', { name: /^Differences of KIT-/ });

  test('the clerk’s page, open all the while, has nothing to pull until the inspector signs the scope; then it says what', async () => {
    await clerk.goto(`/kits/${job.kitId}`);
    await clerk.getByText('Nothing is promised to this kit').waitFor(slow);
    expect(await differences().count()).toBe(0);
    await inspector.goto(`/work-orders/${job.id}`);
    await inspector.getByRole('button', { name: 'Change the scope' }).click(slow);
    const dialog = inspector.getByRole('dialog');
    await dialog.getByRole('button', { name: /What is asked for/ }).click(slow);
    await inspector.getByRole('option', { name: 'Overhaul' }).click();
    await dialog.getByText('What the record may say at most').waitFor(slow);
    await dialog.getByLabel('Who asked, or what was found').fill('The owner wants the overhaul after all');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await inspector.getByLabel('Your PIN').fill(demoPin);
    await inspector.getByRole('button', { name: /^Sign as/ }).click();
    await inspector.getByText(`${job.number} goes on as: Overhaul.`).waitFor(slow);

    // Without a touch of the clerk's.
    await differences().waitFor(slow);
    const later = await linesToPull();
    expect(later.length).toBeGreaterThan(0);
    const rows = (await differences().locator('tbody tr').allTextContents()).map((row) => row.replaceAll(/\s+/g, ' '));
    for (const { part, position } of later)
      expect(rows.some((row) => row.includes('pull') && row.includes(part.number) && row.includes(position))).toBe(
        true,
      );
    await clerk
      .getByRole('tab', { name: `All ${await job.reads.kitLine.count({ where: { kitId: job.kitId } })} lines` })
      .waitFor(slow);
    expect(await job.reads.kitLine.count({ where: { kitId: job.kitId } })).toBeGreaterThan(firstLines);
    for (const [width, height] of [
      [1180, 820],
      [1366, 768],
    ] as const) {
      await clerk.setViewportSize({ width, height });
      await looksRight(clerk, `scope-added-${width}`);
      expect(await clerk.evaluate<number>('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
    }
  }, 180_000);

  test('what the new scope asks for is scanned into the tray line by line, what it does not ask for goes back', async () => {
    for (const name of await differences()
      .getByRole('button', { name: /^Bring back/ })
      .all()) {
      await name.click(slow);
      await clerk.getByRole('dialog').getByRole('button', { name: 'Bring back to the bin' }).click(slow);
      await clerk.getByRole('dialog').waitFor({ ...slow, state: 'detached' });
    }
    for (const line of await linesToPull()) {
      const lotCode = await job.onShelf(line.partId, line.quantity);
      await scan(clerk, lotCode);
      await clerk.getByText(new RegExp(`In the tray: ${lotCode}`)).waitFor(slow);
    }
    await differences().waitFor({ ...slow, state: 'detached' });
    await looksRight(clerk, 'scope-added-pulled');
    const { lines } = await kit();
    // Line by line the tray is what the new list asks for from stock.
    expect(lines.filter(({ toPull }) => toPull > 0)).toEqual([]);
    for (const line of lines.filter(({ source }) => source === 'new'))
      expect({ position: line.position, inTray: line.inTray }).toEqual({
        position: line.position,
        inTray: line.quantity,
      });
  }, 180_000);

  /** The kit as the clerk's own page reads it. */
  async function kit(): Promise<{
    lines: { position: string; source: string; quantity: number; inTray: number; toPull: number }[];
  }> {
    return (await clerk.request.get(`/api/kits/${job.kitId}`)).json();
  }
});
