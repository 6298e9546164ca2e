import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';

describe('the browser of the tests', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  }, 60_000);
  afterAll(() => browser?.close());

  test('is a real Chromium that runs scripts and draws a page', async () => {
    const page = await browser.newPage({ viewport: { width: 1180, height: 820 } });
    await page.setContent('<title>Hub</title><main><h1>Propeller</h1></main>');
    expect(await page.evaluate('document.title + innerWidth')).toBe('Hub1180');
    expect(await page.getByRole('heading', { name: 'Propeller' }).isVisible()).toBe(true);
    expect((await page.screenshot()).length).toBeGreaterThan(1_000);
    expect(browser.version()).toMatch(/^\d{3}\./);
  });
});
