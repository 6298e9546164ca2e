import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { readsOf } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { day } from '../support/days.ts';
import { looksRight } from '../support/looks.ts';
import { ShopApp } from '../support/shop-app.ts';
import { builtDashboard, pageOf } from '../support/view-page.ts';

const head =
  'Tail,Aircraft type,Engine type,Prop,Serial no,Fitted on,Hours from,Hours at installation,TSN,TSO,Hours now,As of';
const row = (tail: string, serial: string, more: { tsn?: string; tso?: string } = {}) =>
  [tail, 'Heronby Courser 4', 'Brindle B-540', 'Q3C-76', serial, '2026-01-10', 'tachometer', '1000.0']
    .concat([more.tsn ?? '2210.5', more.tso ?? '0.0', '1180.4', '2026-11-01'])
    .join(',');

describe('the desk brings a customer’s fleet in', () => {
  let shop: ShopApp;
  let browser: Browser;
  let desk: Page;
  let customerId: string;
  const slow = { timeout: 15_000 };
  const file = (lines: readonly string[]) => ({
    ...{ name: 'fleet.csv', mimeType: 'text/csv' },
    buffer: Buffer.from(lines.join('\r\n')),
  });

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    browser = await openBrowser();
    desk = await pageOf(browser, shop, { signInName: 'desk' });
    customerId = (await readsOf(shop).customer.findUniqueOrThrow({ where: { code: 'OXLIP' } })).id;
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  test('names the column nobody could guess, and sees the wrong row at its cell', async () => {
    await desk.goto(`/customers/${customerId}`);
    await desk.getByRole('link', { name: 'Tables of their fleet' }).click();
    await desk.getByText('No table of this customer was taken over yet').waitFor(slow);
    await looksRight(desk, 'fleet-tables-empty');
    const lines = [head, row('ZZ-B01', 'BF001'), row('ZZ-B02', 'BF002', { tsn: '10.0', tso: '90.0' })];
    await desk.locator('input[type=file]').setInputFiles(file(lines));
    await desk.getByText('Say which column is the model.').waitFor(slow);
    await looksRight(desk, 'fleet-tables-columns');
    await desk.getByRole('button', { name: /^not in this file model/ }).click();
    await desk.getByRole('option', { name: 'Prop', exact: true }).click();
    await desk.getByText('1 row wrong').waitFor(slow);
    await desk.getByText('More than its time since new: one of the two is wrong').waitFor(slow);
    expect(await desk.getByRole('button', { name: 'Take the table over' }).isDisabled()).toBe(true);
    await looksRight(desk, 'fleet-tables-wrong-row');
  }, 60_000);

  test('mends it, takes it over, and the same file says that all of it is on record', async () => {
    const lines = [head, row('ZZ-B01', 'BF001'), row('ZZ-B02', 'BF002', { tsn: '100.0', tso: '90.0' })];
    await desk.locator('input[type=file]').setInputFiles(file(lines));
    await desk.getByText('Say which column is the model.').waitFor(slow);
    await desk.getByRole('button', { name: /^not in this file model/ }).click();
    await desk.getByRole('option', { name: 'Prop', exact: true }).click();
    await desk.getByText('2 rows new').waitFor(slow);
    await desk.getByRole('button', { name: 'Take the table over' }).click();
    await desk.getByText('Aircraft and the units on them: 2 new, 0 changed, 0 the same.').waitFor(slow);
    await desk.locator('input[type=file]').setInputFiles(file(lines));
    await desk.getByText('Everything in this table is on record already.').waitFor(slow);
    await looksRight(desk, 'fleet-tables-same');
  }, 60_000);

  test('types a round of readings: a lower figure asks whether the meter was replaced', async () => {
    await desk.goto(`/customers/${customerId}/readings`);
    await desk.getByLabel('Who says so').fill('owner by telephone');
    await desk.getByLabel('ZZ-B01 shows').fill('1190.0');
    await desk.getByLabel('ZZ-B02 shows').fill('12.5');
    await desk.getByText('Lower than the last reading.').waitFor(slow);
    await desk.getByText('The meter was replaced, and the new one began at nought').click();
    await desk.getByLabel('Replaced on').fill(day(-9));
    await desk.getByLabel('The old one showed last').fill('1183.0');
    await looksRight(desk, 'readings-grid');
    await desk.getByRole('button', { name: 'Record 2 readings' }).click();
    await desk.getByText('2 readings recorded.').waitFor(slow);
    const changes = await readsOf(shop).meterChange.findMany({ where: { aircraft: { registration: 'ZZ-B02' } } });
    expect(changes.map(({ oldTenths }) => oldTenths)).toEqual([11_830]);
  }, 60_000);

  test('opens the one unit a serial names, and takes back an installation that never was', async () => {
    await desk.goto('/find?code=BF00');
    await desk.getByRole('link', { name: 'BF001' }).waitFor(slow);
    await desk.goto('/find?code=F001');
    await desk.getByRole('heading', { name: 'BF001: what is it made of, and where has it been?' }).waitFor(slow);
    await desk.getByText('It was never released here').waitFor(slow);
    await desk.getByRole('link', { name: 'as PDF' }).waitFor(slow);
    await looksRight(desk, 'unit-with-papers');
    await desk.getByRole('button', { name: 'Withdraw' }).click();
    await desk.getByLabel('Why it never was').fill('the table named the wrong serial');
    await looksRight(desk, 'unit-withdraw');
    await desk.getByRole('button', { name: 'Withdraw the installation' }).click();
    await desk.getByText('The installation on ZZ-B01 counts no more.').waitFor(slow);
  }, 60_000);
});
