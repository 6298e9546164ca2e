import { customerOperations } from '@hubwright/contracts/customers/operations';
import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import pg from 'pg';
import type { Browser, Page } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { as } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

describe('when a unit is next due, on its page', () => {
  let shop: ShopApp;
  let browser: Browser;
  let page: Page;
  let unitId: string;

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    browser = await openBrowser();
    const job = await Job.arrived(shop, 'QW400');
    unitId = job.unitId;
    const { aircraftId } = await job.workOrder();
    // Overhauled and shipped 700 days ago, by its papers.
    const sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
    await sql.query(
      `UPDATE work_orders SET received_on = '${day(-730)}', stage = 'closed', shipped_at = '${day(-700)}', closed_at = '${day(-700)}'`,
    );
    await sql.query(
      `INSERT INTO time_records (id, item_id, recorded_on, since_overhaul_tenths, meter, meter_tenths, basis, recorded_at)
       VALUES (gen_random_uuid(), $1, '${day(-700)}', 0, 'tachometer', 30000, 'overhaul', now())`,
      [unitId],
    );
    await sql.end();
    const desk = await as(shop, 'front-desk');
    const at = { aircraftId: aircraftId ?? '', meter: 'tachometer' as const };
    const answers = [
      await desk.call(intervalOperations.reportInstalled, {
        ...{ ...at, itemId: unitId, position: 'single', from: day(-690), fromTenths: 30_000, basis: 'logbook' },
      }),
      await desk.call(customerOperations.recordReading, { ...at, readOn: day(-350), hoursTenths: 36_000 }),
      await desk.call(customerOperations.recordReading, { ...at, readOn: day(-10), hoursTenths: 42_000 }),
    ];
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200]);
    page = await pageOf(browser, shop, { signInName: 'front-desk' });
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await shop.close();
  });

  test('likely days are drawn and said, and a supposed use is answered at once', async () => {
    await page.goto(`/units/${unitId}`);
    const sheet = page.getByRole('region', { name: 'Next due' });
    await sheet.getByRole('img', { name: /Likely days/ }).waitFor({ timeout: 20_000 });
    expect(await sheet.textContent()).toContain('The hour limit governs');
    await sheet.getByLabel('What if it flies so many hours a month').fill('100');
    await sheet.getByText(/At 100\.0\sh a month: *due/).waitFor({ timeout: 10_000 });
    await picture(page, 'next-due-1366');
    expect(await accessibilityFaults(page)).toEqual([]);
    await sheet.getByLabel('What if it flies so many hours a month').fill('1000');
    await sheet.getByText('Between 0.1 and 730 hours a month.').waitFor({ timeout: 10_000 });
    await page.setViewportSize({ width: 1180, height: 820 });
    await sheet.getByLabel('What if it flies so many hours a month').fill('5');
    await sheet.getByText(/At 5\.0\sh a month: *due/).waitFor({ timeout: 10_000 });
    await picture(page, 'next-due-1180');
    const wide = await page.evaluate<boolean>('document.documentElement.scrollWidth > document.documentElement.clientWidth');
    expect(wide).toBe(false);
  }, 90_000);
});
