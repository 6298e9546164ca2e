import { customerOperations } from '@hubwright/contracts/customers/operations';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { demoPassword } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { as } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { builtDashboard, pageOf } from '../support/view-page.ts';

const hostile = '<img src=x onerror="window.planted=1"><script>window.planted=1</script>';

describe('the dashboard under its content policy', () => {
  let shop: ShopApp;
  let browser: Browser;
  beforeAll(async () => {
    [shop, browser] = await Promise.all([ShopApp.open('shop', { dashboardFolder: builtDashboard }), openBrowser()]);
    const desk = await as(shop, 'front-desk');
    const added = await desk.call(customerOperations.addCustomer, {
      code: 'HOSTILE',
      name: hostile,
      acceptedSources: ['maker-new'],
    });
    if (added.status !== 200) throw new Error(JSON.stringify(added.body));
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  /** Everything the browser had to say against a page. */
  function complaints(page: Page): string[] {
    const found: string[] = [];
    page.on('console', (message) => {
      if (/Content Security Policy|Refused to|violates/i.test(message.text())) found.push(message.text());
    });
    page.on('pageerror', (error) => found.push(error.message));
    return found;
  }

  test.each(['desk', 'parts', 'tech', 'inspector', 'manager', 'admin'])(
    'nothing that %s opens asks for more than it allows',
    async (signInName) => {
      const page = await pageOf(browser, shop, { signInName });
      const found = complaints(page);
      await page.reload();
      const links = page.getByRole('navigation').getByRole('link');
      await links.first().waitFor();
      const addresses = await page.evaluate(
        "[...document.querySelectorAll('nav a')].map((link) => link.getAttribute('href'))",
      );
      for (const address of addresses as string[]) {
        await page.goto(address);
        await page.getByRole('heading').first().waitFor();
      }
      await page.waitForLoadState('networkidle').catch(() => undefined);
      expect(found).toEqual([]);
      // The same page notices what the policy forbids: the check above can fail.
      await page.evaluate(
        "document.head.append(Object.assign(document.createElement('style'), { textContent: 'a{}' }))",
      );
      await page.waitForTimeout(300);
      expect(found.join()).toMatch(/style-src/);
      await page.context().close();
    },
    60_000,
  );

  test('the sign-in hides the password, takes a pasted one and keeps nothing in the browser; signing out leaves nothing', async () => {
    const context = await browser.newContext({ baseURL: shop.address });
    const page = await context.newPage();
    await page.goto('/sign-in');
    const field = page.getByLabel('Password', { exact: true });
    expect(await field.getAttribute('type')).toBe('password');
    expect(await field.getAttribute('autocomplete')).toBe('current-password');
    await page.getByLabel('Sign-in name').fill('desk');
    await field.focus();
    await page.keyboard.insertText(demoPassword);
    await page.keyboard.press('Enter');
    await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
    const kept = await page.evaluate<string>(
      'JSON.stringify([{ ...localStorage }, { ...sessionStorage }, document.cookie])',
    );
    expect(kept).not.toMatch(/willow|Wilmot|Tarrow|hubwright=/i);
    expect(page.url()).not.toMatch(/willow|token|session/i);
    await page.evaluate("fetch('/api/session', { method: 'DELETE', headers: { 'idempotency-key': 'ends-this-one' } })");
    await page.goto('/customers');
    await page.waitForURL((url) => url.pathname.startsWith('/sign-in'));
    await context.close();
  }, 60_000);

  test('what a person typed is shown as text, never run', async () => {
    const page = await pageOf(browser, shop, { signInName: 'desk' });
    await page.goto('/customers');
    await page.getByText(hostile).first().waitFor();
    expect(await page.evaluate('window.planted')).toBeUndefined();
    await page.context().close();
  }, 60_000);
});
