import { fieldBalanceOperations as op } from '@hubwright/contracts/field-balance/operations';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { courserRotor, readingsWith, sheet } from '../../seed/data/field-balance.ts';
import { demoPin } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { installed, planning, weightsOnShelf } from '../support/on-aircraft.ts';
import { as } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture, scan } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('balance on the aircraft, at a tablet', () => {
  let shop: ShopApp;
  let browser: Browser;
  let technician: Page;
  let address: string;
  let lots: string[];
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    const job = await installed(shop, 'F7101');
    lots = [await weightsOnShelf(job, 'Q-DW-B2', 6), await weightsOnShelf(job, 'Q-DW-W1', 20)];
    const planned = await (await as(shop, 'front-desk')).call(op.planFieldBalance, await planning(job));
    address = `/on-aircraft/${planned.body.id}`;
    browser = await openBrowser();
    technician = await pageOf(browser, shop, { signInName: 'tech', width: 1180, height: 820 });
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `field-balance-${name}`);
  }
  const signed = async (page: Page) => {
    await page.getByLabel('Your PIN').fill(demoPin);
    await page.getByRole('button', { name: /^Sign as/ }).click();
  };
  const chosen = async (label: RegExp, option: RegExp, at = 0) => {
    await technician.getByRole('dialog').getByRole('button', { name: label }).nth(at).click();
    await technician.getByRole('option', { name: option }).click();
  };
  const read = async (weights: Parameters<typeof readingsWith>[1]) => {
    const dialog = technician.getByRole('dialog');
    for (const [at, { rpm, amplitude, phase }] of readingsWith(courserRotor, weights).entries()) {
      await dialog.getByLabel('Speed', { exact: true }).nth(at).fill(String(rpm));
      await dialog.getByLabel('Vibration').nth(at).fill(amplitude);
      await dialog.getByLabel('Phase', { exact: true }).nth(at).fill(phase);
    }
    await dialog.getByRole('button', { name: 'Put the run on record' }).click();
  };

  test('set up, run, weighted from stock, run again, signed and released with the entry for the log', async () => {
    await technician.goto('/on-aircraft');
    await technician.getByText('FB-0001').first().waitFor(slow);
    await scan(technician, 'FB-0001');
    await technician.waitForURL(`**${address}`, slow);
    await technician.getByRole('button', { name: 'Fill in the sheet before any run' }).click(slow);
    const dialog = technician.getByRole('dialog');
    await dialog.getByLabel('Off-station procedure').fill(sheet.procedure);
    await dialog.getByLabel('Wind').fill('14');
    await dialog.getByLabel('Weather').fill(sheet.weather);
    for (const point of ['chocked', 'Propeller plane', 'Cowling', 'Brakes', 'Observer'])
      await dialog.getByText(new RegExp(point)).click();
    await dialog.getByLabel('Sensor sits').fill(sheet.sensorPlace);
    await chosen(/Sensor axis/, /Vertical/);
    await dialog.getByLabel('Phase reference').fill(sheet.phaseReference);
    await chosen(/Instrument counts phase/, /^Clockwise/);
    await chosen(/^(?!.*counts).*Instrument/, /VIB-01/);
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signed(technician);
    await dialog.getByText('Above 10 kt', { exact: true }).waitFor(slow);
    await dialog.getByLabel('Wind').fill('6');
    await looksRight(technician, 'sheet');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signed(technician);

    await technician.getByRole('button', { name: 'Put the baseline on record' }).click(slow);
    await dialog.getByRole('button', { name: 'Another speed' }).click();
    await read([]);
    await technician.getByRole('button', { name: 'Trial run' }).click(slow);
    await dialog.getByLabel('Mass').fill('12');
    await chosen(/Place/, /^H1,/);
    await read([[12, 0]]);
    await technician.getByRole('heading', { name: /^Add 2[34]\.\d g at 3\d°/ }).waitFor(slow);
    await technician.getByRole('img', { name: 'Vibration at 2500 rpm' }).waitFor(slow);
    await looksRight(technician, 'answer');

    await technician.getByRole('button', { name: 'Fit weights' }).click();
    const rows = dialog.getByLabel('Pieces');
    while ((await rows.count()) < 2) await dialog.getByRole('button', { name: 'Another weight' }).click();
    for (const [at, place] of ['H2', 'H3'].entries()) {
      await chosen(/Place/, new RegExp(`^${place},`), at);
      await chosen(/From lot/, new RegExp(lots[at] ?? ''), at);
      await rows.nth(at).fill('2');
    }
    for (let at = 2; at < (await rows.count()); at += 1) {
      await chosen(/Place/, /^H3,/, at);
      await chosen(/From lot/, new RegExp(lots[1] ?? ''), at);
      await rows.nth(at).fill('1');
    }
    const extra = Math.max(0, (await rows.count()) - 2);
    await dialog.getByRole('button', { name: 'Fit them' }).click();
    await technician.getByText('weights changed, run next').waitFor(slow);
    await technician.getByRole('button', { name: 'Run with the weights as they stand' }).click();
    await read([
      [16.8, 30],
      [4.2 + extra * 2.1, 60],
    ]);
    await technician.getByRole('button', { name: 'It is balanced: sign' }).click(slow);
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signed(technician);
    await technician.getByText('balanced, to be released').waitFor(slow);

    const inspector = await pageOf(browser, shop, { signInName: 'inspector', width: 1440, height: 900 });
    await inspector.goto(address);
    await inspector.getByRole('button', { name: 'Release with the log entry' }).click(slow);
    await inspector.getByText(/Entry for the aircraft’s log: Propeller Q3C-76, serial F7101/).waitFor(slow);
    await signed(inspector);
    await inspector.getByRole('link', { name: 'Print the record' }).waitFor(slow);
    await looksRight(inspector, 'released');
  }, 180_000);
});
