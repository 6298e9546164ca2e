import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, until } from '../support/view-page.ts';

describe('the first view', () => {
  let shop: ShopApp;
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    browser = await openBrowser();
    page = await pageOf(browser, shop, { signInName: 'parts' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  test('needs no more than 250 kB of script, gzipped, before it shows anything', () => {
    const html = readFileSync(join(builtDashboard, 'index.html'), 'utf8');
    const scripts = [...html.matchAll(/(?:src|href)="(\/[^"]+\.js)"/g)].map(([, path]) => path as string);
    const bytes = scripts.map((path) => gzipSync(readFileSync(join(builtDashboard, path))).length);
    expect(scripts.length).toBeGreaterThan(2);
    expect(bytes.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(250_000);
  });

  test('has a menu that opens with the arrow key, goes down with it, and gives the focus back', async () => {
    const menu = page.getByRole('banner').getByRole('button', { expanded: false }).last();
    await menu.focus();
    await page.keyboard.press('ArrowDown');
    await page.getByRole('menuitem', { name: 'Your account' }).waitFor();
    const focused = () => page.evaluate<string>('document.activeElement.textContent');
    expect(await focused()).toBe('Your account');
    await page.keyboard.press('ArrowDown');
    expect(await focused()).toBe('Lock this device');
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('menuitem').first().waitFor({ state: 'detached' });
    await until(page, `document.activeElement.textContent === ${JSON.stringify(await menu.textContent())}`);
    await page.keyboard.press('Enter');
    await page.getByRole('menuitem', { name: 'Keys and scanning' }).click();
    await page.getByRole('dialog').waitFor();
  });
});
