import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { demoPin } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { Job } from '../support/job.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('the scope of a unit in the shop', () => {
  let shop: ShopApp;
  let browser: Browser;
  let inspector: Page;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    job = await Job.arrived(shop, '4611');
    await job.inWork();
    browser = await openBrowser();
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  async function looksRight(name: string) {
    expect(await accessibilityFaults(inspector)).toEqual([]);
    await picture(inspector, `scope-${name}`);
  }

  test('is changed by the inspector, who sees what it changes while choosing and signs that', async () => {
    await inspector.goto(`/work-orders/${job.id}`);
    await inspector.getByRole('button', { name: 'Change the scope' }).click(slow);
    const dialog = inspector.getByRole('dialog');
    await dialog.getByText('to see what it changes').waitFor(slow);
    await dialog.getByText('Propeller strike').click();
    await dialog.getByText('Magnetic particle test, arms, after the event').waitFor(slow);
    await dialog.getByRole('button', { name: /What is asked for/ }).click();
    await inspector.getByRole('option', { name: 'Reseal' }).click();
    await dialog.getByText(/No, because: After propeller strike/i).waitFor(slow);
    await looksRight('refused');
    await dialog.getByRole('button', { name: /What is asked for/ }).click();
    await inspector.getByRole('option', { name: 'Strike inspection' }).click();
    await dialog.getByText('Measure bend').first().waitFor(slow);
    await dialog.getByText(/engine and governor of the same installation/).waitFor(slow);
    await looksRight('differences');
    await dialog.getByLabel('Who asked, or what was found').fill('The pilot told of a strike on grass');
    await dialog.getByLabel('Hidden damage').fill('Arms and roots under light: nothing found');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await inspector.getByText('And', { exact: false }).first().waitFor(slow);
    await looksRight('signing');
    await inspector.getByLabel('Your PIN').fill(demoPin);
    await inspector.getByRole('button', { name: /^Sign as/ }).click();
    await inspector.getByText(`${job.number} goes on as: Strike inspection.`).waitFor(slow);
    await inspector.getByText('Quote to write').first().waitFor(slow);
    await looksRight('changed');
    expect(await job.workOrder()).toMatchObject({
      scope: 'strike-inspection',
      events: ['strike'],
      consent: 'quote-due',
    });
  }, 120_000);
});
