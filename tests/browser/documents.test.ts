import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { demoPin } from '../../seed/data/people.ts';
import { readsOf } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { Job } from '../support/job.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('the papers work goes by', () => {
  let shop: ShopApp;
  let browser: Browser;
  let inspector: Page;
  let technician: Page;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    job = await Job.arrived(shop, '4621');
    await job.tornDown();
    browser = await openBrowser();
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
    technician = await pageOf(browser, shop, { signInName: 'tech' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `documents-${name}`);
  }
  const sign = async () => {
    await inspector.getByLabel('Your PIN').fill(demoPin);
    await inspector.getByRole('button', { name: /^Sign as/ }).click();
  };

  test('are added with the issue the shop holds, and found current by signature', async () => {
    await inspector.goto('/documents');
    await inspector.getByRole('link', { name: 'QSL-44' }).waitFor(slow);
    await looksRight(inspector, 'list');
    await inspector.getByRole('button', { name: 'Add a document' }).click();
    const dialog = inspector.getByRole('dialog');
    await dialog.getByLabel('Number').fill('QTR-301-2');
    await dialog.getByLabel('Title').fill('Temporary revision, blade clamps');
    await dialog.getByLabel('Issued by').fill('Quillon');
    await dialog.getByRole('button', { name: 'Add the document' }).click();
    await dialog.getByText('Name at least one model').first().waitFor(slow);
    await dialog.getByLabel('Models it belongs to').fill('Q3C');
    await inspector.getByRole('option', { name: /Q3C-76/ }).click(slow);
    await dialog.getByLabel('Issue or revision').fill('first issue');
    await dialog.getByLabel('What it changes').fill('Clamp bores are measured at three places.');
    await looksRight(inspector, 'adding');
    await dialog.getByRole('button', { name: 'Add the document' }).click();
    await inspector.getByRole('heading', { name: /QTR-301-2/ }).waitFor(slow);
    await inspector.getByRole('button', { name: 'Check currency' }).click();
    await inspector.getByRole('button', { name: 'Go on to sign' }).click(slow);
    await sign();
    await inspector.getByText('is signed as current').waitFor(slow);
    await looksRight(inspector, 'opened');
    expect(await readsOf(shop).documentIssue.count({ where: { document: { number: 'QTR-301-2' } } })).toBe(1);
  }, 120_000);

  test('stop open work that is not on the current ones, until an inspector has read what changed and signs', async () => {
    const [step] = await job.nextSteps();
    await technician.goto(`/travelers/${step?.travelerId}`);
    await technician.getByText(/does not go by the current issue of: QTR-301-2/).waitFor(slow);
    await inspector.goto(`/work-orders/${job.id}?tab=documents`);
    await inspector.getByText('Clamp bores are measured at three places.', { exact: false }).first().waitFor(slow);
    await inspector.getByText('QBM-2').waitFor(slow);
    await looksRight(inspector, 'stopped');
    await inspector.getByRole('button', { name: 'Go on by the current issues' }).click();
    await looksRight(inspector, 'signing');
    await sign();
    await inspector.getByText(`${job.number} goes by the current issues.`).waitFor(slow);
    await inspector.getByText('QTR-301-2').first().waitFor(slow);
    expect(await inspector.getByText('work stands still').count()).toBe(0);
    await looksRight(inspector, 'taken-over');
    await technician.getByRole('button', { name: 'Done and good: sign' }).waitFor(slow);
  }, 120_000);
});
