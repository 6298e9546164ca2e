import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { readsOf } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { Job } from '../support/job.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture, scan } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('time at the bench', () => {
  let shop: ShopApp;
  let browser: Browser;
  let technician: Page;
  let manager: Page;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    job = await Job.arrived(shop, '4631');
    await job.tornDown();
    browser = await openBrowser();
    technician = await pageOf(browser, shop, { signInName: 'tech' });
    manager = await pageOf(browser, shop, { signInName: 'manager' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `clock-${name}`);
  }
  const codeOf = (step: { id: string; traveler: { number: string } }) =>
    `${step.traveler.number}.${step.id.slice(-6).toUpperCase()}`;
  const running = () => technician.getByRole('region', { name: 'Your clock' });

  test('a scan of a step’s barcode opens it and starts the clock, the next scan moves it, and scanning out ends it', async () => {
    const [one, two] = [await job.nextAt('blade 1'), await job.nextAt('hub')];
    await technician.goto('/bench');
    await technician.getByRole('tab', { name: 'Units' }).waitFor(slow);
    await scan(technician, codeOf(one));
    await technician.waitForURL(`**/travelers/${one.travelerId}?step=${one.id}`);
    await running()
      .getByRole('link', { name: new RegExp(one.title) })
      .waitFor(slow);
    await technician.getByText('Your clock runs on this since').waitFor(slow);
    await looksRight(technician, 'running');
    await scan(technician, codeOf(two));
    await running()
      .getByRole('link', { name: new RegExp(two.title) })
      .waitFor(slow);
    await scan(technician, 'CLOCK-OUT');
    await technician.getByText('Your clock stopped.').waitFor(slow);
    await running().waitFor({ state: 'detached', timeout: 20_000 });
    const entries = await readsOf(shop).clockEntry.findMany({ orderBy: { startedAt: 'asc' } });
    expect(entries.map(({ stepId }) => stepId)).toEqual([one.id, two.id]);
    expect(entries[0]?.endedAt).toEqual(entries[1]?.startedAt);
    await scan(technician, 'TR-00001.000000');
    await technician.getByText('is no step of a traveler here').waitFor(slow);
  }, 120_000);

  test('work that is done again is started as such on the step, and a manager sees and mends where the hours went', async () => {
    const step = await job.nextAt('blade 2');
    await technician.goto(`/travelers/${step.travelerId}?step=${step.id}`);
    await technician.getByRole('button', { name: /Time is/ }).click(slow);
    await technician.getByRole('option', { name: 'Redo' }).click();
    await technician.getByRole('button', { name: 'Start my clock' }).click();
    await running().getByText('(redo)').waitFor(slow);
    await running().getByRole('button', { name: 'Scan out' }).click();
    await technician.getByText('Your clock stopped.').waitFor(slow);
    await manager.goto('/times');
    await manager.getByRole('table', { name: 'Time entries' }).waitFor(slow);
    await looksRight(manager, 'times');
    await manager.getByRole('button', { name: /^Mend .*\(redo\)/ }).click(slow);
    const dialog = manager.getByRole('dialog');
    await dialog.getByLabel('Why it is entered now').fill('scanned out too early');
    await dialog.getByRole('button', { name: 'Mend it' }).click();
    await dialog.getByText('No, because').or(dialog.getByText('Not after the beginning')).first().waitFor(slow);
    await looksRight(manager, 'mending');
    const hourAgo = new Date(Date.now() - 3_600_000);
    const entry = (at: Date) => new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
    await dialog.getByLabel('Begun').fill(entry(hourAgo));
    await dialog.getByLabel('Ended').fill(entry(new Date(hourAgo.getTime() + 20 * 60_000)));
    await dialog.getByRole('button', { name: 'Mend it' }).click();
    await manager.getByText('the earlier entry stays on record').waitFor(slow);
    await manager.getByText('scanned out too early').waitFor(slow);
    expect(await readsOf(shop).clockEntry.count()).toBe(4);
  }, 120_000);
});
