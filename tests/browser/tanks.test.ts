import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { demoPin } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('tanks and checks on the floor', () => {
  let shop: ShopApp;
  let browser: Browser;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    browser = await openBrowser();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `tanks-${name}`);
  }

  test('the inspector sees at once what is not checked today', async () => {
    const page = await pageOf(browser, shop, { signInName: 'inspector', width: 1440, height: 900 });
    await page.goto('/inspection');
    const panel = page.getByRole('region', { name: 'Checks, tanks and gauges today' });
    await panel.getByText('5 of 5 not fit yet').waitFor(slow);
    await panel.getByText('UV-A at 15 in: not checked today').first().waitFor(slow);
    await looksRight(page, 'inspection');
    await panel.getByRole('link', { name: 'PEN-1' }).click();
    await page.getByRole('heading', { name: /PEN-1/ }).waitFor(slow);
    await page.context().close();
  }, 60_000);

  test('the technician checks the penetrant line: a low lamp shuts it, nothing was filled in, a good one opens it', async () => {
    const page = await pageOf(browser, shop, { signInName: 'tech', width: 1180, height: 820 });
    await page.goto('/tanks-and-checks');
    const line = page.getByRole('region', { name: 'PEN-1' });
    const check = async (lamp: string) => {
      await line.getByRole('button', { name: 'Record the check of the day' }).click();
      expect(await page.getByLabel('UV-A at 15 in').inputValue()).toBe('');
      await page.getByLabel('UV-A at 15 in').fill(lamp);
      await page.getByLabel('ambient light').fill('1.0');
      for (const group of await page.getByRole('radiogroup').all()) await group.getByText('Yes').click();
    };
    const sign = async () => {
      await page.getByRole('button', { name: 'Go on to sign' }).click();
      await page.getByLabel('Your PIN').fill(demoPin);
      await page.getByRole('button', { name: /^Sign as/ }).click();
    };
    await check('990');
    await page.getByText('out of its limits: nothing more is signed with it until a good one').waitFor(slow);
    await looksRight(page, 'check');
    await sign();
    await line.getByText('UV-A at 15 in: out of limits: 990 µW/cm²').waitFor(slow);
    await check('1210');
    await sign();
    await line.getByText('fit for work').waitFor(slow);
    await looksRight(page, 'systems');
    await page.getByRole('tab', { name: /^Tanks/ }).click();
    const bath = page.getByRole('region', { name: 'CAD-1' });
    await bath.getByRole('button', { name: 'Log and charts' }).click();
    const chart = bath.getByRole('img', { name: /cadmium metal, result by result/ });
    await chart.scrollIntoViewIfNeeded();
    await looksRight(page, 'tank');
    await page.context().close();
  }, 60_000);
});
