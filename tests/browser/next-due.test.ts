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
  let customerId: string;
  let registration: string;

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    browser = await openBrowser();
    const job = await Job.arrived(shop, 'QW400');
    unitId = job.unitId;
    const { aircraftId, customerId: owner } = await job.workOrder();
    customerId = owner;
    registration = (await job.reads.aircraft.findUniqueOrThrow({ where: { id: aircraftId ?? '' } })).registration;
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
    page = await pageOf(browser, shop, { signInName: 'desk' });
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await shop.close();
  });

  test('likely days are drawn and said, and a supposed use is answered at once', async () => {
    await page.goto(`/units/${unitId}`);
    const sheet = page.getByRole('region', { name: 'Next due' });
    await sheet.getByRole('img', { name: /^likely/ }).waitFor({ timeout: 20_000 });
    expect(await sheet.textContent()).toContain('The hour limit governs');
    await sheet.getByLabel('What if it flies so many hours a month').fill('100');
    await sheet.getByText(/At 100\.0\s*h a month: *due/).waitFor({ timeout: 10_000 });
    await picture(page, 'next-due-1366');
    expect(await accessibilityFaults(page)).toEqual([]);
    await sheet.getByLabel('What if it flies so many hours a month').fill('1000');
    await sheet.getByText('Between 0.1 and 730 hours a month.').waitFor({ timeout: 10_000 });
    await page.setViewportSize({ width: 1180, height: 820 });
    await sheet.getByLabel('What if it flies so many hours a month').fill('5');
    await sheet.getByText(/At 5\.0\s*h a month: *due/).waitFor({ timeout: 10_000 });
    await picture(page, 'next-due-1180');
    const wide = await page.evaluate<boolean>(
      'document.documentElement.scrollWidth > document.documentElement.clientWidth',
    );
    expect(wide).toBe(false);
  }, 90_000);

  test('a meter that was replaced and a reading that was a mistake are said on the customer’s page', async () => {
    await page.setViewportSize({ width: 1366, height: 768 });
    await page.goto(`/customers/${customerId}`);
    await page.getByRole('button', { name: `Look at the meters of ${registration}` }).click();
    const meters = page.getByRole('dialog', { name: `Meters of ${registration}` });
    await meters.getByText('4,200.0').waitFor({ timeout: 10_000 });
    await picture(page, 'meters-1366');
    expect(await accessibilityFaults(page)).toEqual([]);
    await meters.getByRole('button', { name: `the tachometer reading of ${day(-10)} as a mistake` }).click();
    await page.getByLabel('Why it was a mistake').fill('read from the wrong aircraft');
    await page.getByRole('button', { name: 'Mark it as a mistake' }).click();
    await meters.getByText('a mistake: read from the wrong aircraft').waitFor({ timeout: 10_000 });
    await meters.getByRole('button', { name: 'A meter was replaced' }).click();
    const change = page.getByRole('dialog', { name: `A meter of ${registration} was replaced` });
    await change.getByLabel('Which meter').click();
    await page.getByRole('option', { name: 'tachometer' }).click();
    await change.getByLabel('The old one showed last').fill('3650.0');
    await change.getByLabel('The new one showed first').fill('0.0');
    await change.getByLabel('Who says so, or which log entry').fill('logbook page 12');
    await page.setViewportSize({ width: 1180, height: 820 });
    await picture(page, 'meter-replaced-1180');
    expect(await accessibilityFaults(page)).toEqual([]);
    await change.getByRole('button', { name: 'Record the new meter' }).click();
    await meters.getByText(/tachometer replaced at\s*3,650\.0/).waitFor({ timeout: 10_000 });
    await picture(page, 'meters-1180');
  }, 90_000);
});
