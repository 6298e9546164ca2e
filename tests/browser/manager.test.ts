import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { setPromise } from '../../apps/server/src/modules/work-orders/set-promise.command.ts';
import { openBrowser } from '../support/browser.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { actorOf } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('the manager’s morning', () => {
  let shop: ShopApp;
  let browser: Browser;
  let manager: Page;
  let waiting: Job;
  let promised: Job;

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    waiting = await Job.arrived(shop, '4701');
    promised = await Job.arrived(shop, '4702');
    await promised.inWork();
    const { version } = await promised.workOrder();
    const desk = await actorOf(shop, 'front-desk');
    await shop.run(setPromise, { workOrderId: promised.id, promisedOn: day(3), reason: 'asked for' }, desk, {
      version,
    });
    browser = await openBrowser();
    manager = await pageOf(browser, shop, { signInName: 'manager' });
  }, 240_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  test('lands on one sentence that says how many promises there are and who has the units in hand', async () => {
    await manager.getByRole('heading', { name: 'Are we keeping our promises, and what limits us?' }).waitFor(slow);
    await manager.getByText(/^2 units in the house: 0 promises late, 1 to keep this week; 1 wait for/).waitFor(slow);
    await manager.getByText('No finished unit had a promise yet.').waitFor(slow);
  }, 60_000);

  test('the promised unit stands on top; a filter of hands keeps only theirs and stays in the address', async () => {
    const first = manager
      .getByRole('listitem')
      .filter({ hasText: /WO-\d+/ })
      .first();
    expect(await first.textContent()).toContain(promised.number);
    await manager.getByRole('button', { name: /with front desk/ }).click();
    await manager.waitForURL(/hands=front-desk/);
    await manager.getByRole('link', { name: waiting.number }).waitFor(slow);
    expect(await manager.getByRole('link', { name: promised.number }).count()).toBe(0);
    await manager.getByRole('button', { name: /in the house/ }).click();
  }, 60_000);

  test('what waits at each process is counted, and why a unit stands is one more step away', async () => {
    const queues = manager.getByRole('table', { name: 'Queue of each process' });
    await queues.getByText('blade repair').waitFor(slow);
    await manager.getByRole('link', { name: promised.number }).click();
    await manager.waitForURL(new RegExp(`/work-orders/${promised.id}`));
  }, 60_000);

  test('a person’s own certificate number is changed in administration and stands beside their name', async () => {
    const administrator = await pageOf(browser, shop, { signInName: 'admin' });
    await administrator.goto('/administration/people');
    await administrator.getByRole('link', { name: 'Sunniva Keld' }).click(slow);
    await administrator.getByRole('button', { name: 'Change or turn off' }).click(slow);
    const number = administrator.getByLabel('Own certificate number');
    expect(await number.inputValue()).toBe('DEMO-R-1871');
    await number.fill('DEMO-R-1872');
    expect(await accessibilityFaults(administrator)).toEqual([]);
    await administrator.getByRole('button', { name: 'Change the person' }).click();
    await administrator.getByText('DEMO-R-1872').waitFor(slow);
    await picture(administrator, 'administration-certificate');
    await administrator.context().close();
  }, 60_000);

  test.each(['light', 'dark'] as const)(
    'has no accessibility fault, %s, at the desk and on a tablet',
    async (colorScheme) => {
      await manager.emulateMedia({ colorScheme });
      for (const size of [
        { width: 1366, height: 768 },
        { width: 1180, height: 820 },
      ]) {
        await manager.setViewportSize(size);
        await manager.goto('/manager');
        await manager.getByRole('heading', { name: 'Authorisations' }).waitFor(slow);
        expect(await accessibilityFaults(manager)).toEqual([]);
        await picture(manager, `manager-${colorScheme}-${size.width}`);
      }
    },
    90_000,
  );
});
