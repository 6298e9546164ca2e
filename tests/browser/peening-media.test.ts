import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { goodCheck, shot } from '../../seed/data/peening.ts';
import { fourBlade } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { Job } from '../support/job.ts';
import { looksRight, signsWithPin } from '../support/looks.ts';
import { ShopApp } from '../support/shop-app.ts';
import { builtDashboard, pageOf } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('media of a peening machine', () => {
  let shop: ShopApp;
  let browser: Browser;
  let technician: Page;
  let inspector: Page;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    const job = await Job.arrived(shop, 'B4301', await fourBlade(shop, 'B4301'));
    await job.inWork();
    const peened = [];
    for (const position of ['blade 1', 'blade 2'])
      for (;;) {
        const step = await job.nextAt(position);
        if (step.peening !== null) {
          peened.push(step.id);
          break;
        }
        await job.sign(step);
      }
    await job.peened(peened);
    browser = await openBrowser();
    technician = await pageOf(browser, shop, { signInName: 'maren', width: 1180, height: 820 });
    inspector = await pageOf(browser, shop, { signInName: 'inspector', width: 1440, height: 900 });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  test('fails its check, and the lot since the last good one is in doubt until an inspector decides', async () => {
    await technician.goto('/peening?sheet=media');
    await technician.getByRole('list', { name: 'Due at the machines' }).getByText('check holds').waitFor(slow);
    await looksRight(technician, 'peening-media');
    await technician.getByRole('button', { name: 'Check it' }).click();
    const dialog = technician.getByRole('dialog');
    for (const { name, percent } of goodCheck().sieves) await dialog.getByLabel(name).fill(percent);
    await dialog.getByLabel('Broken or deformed').fill('31');
    await dialog.getByText('Clean', { exact: true }).click();
    await dialog.getByText('31 broken or deformed in the field, 12 allowed.').waitFor(slow);
    await looksRight(technician, 'peening-media-check');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signsWithPin(technician);
    await technician.getByText('SH-2214 failed its check: PL-0001 wait for a decision.').waitFor(slow);

    await inspector.goto('/peening');
    await inspector.getByText('in doubt since a media check failed: PL-0001').waitFor(slow);
    await looksRight(inspector, 'peening-doubt');
    await inspector.getByRole('button', { name: /^Decide on PL-0001/ }).click();
    await inspector.getByText('the peening stands').click();
    await inspector.getByLabel('Why').fill('Closing strips within the band, coverage looked at again');
    await inspector.getByRole('button', { name: 'Go on to sign' }).click();
    await signsWithPin(inspector);
    await inspector.getByText('Decided on PL-0001: the peening stands.').waitFor(slow);
    expect(await inspector.getByText('in doubt since').count()).toBe(0);
  }, 180_000);

  test('is taken out, and another lot goes in', async () => {
    await technician.getByRole('button', { name: 'Take it out' }).click(slow);
    await technician.getByLabel('Why').fill('Broken down');
    await technician.getByRole('dialog').getByRole('button', { name: 'Take it out' }).click();
    await technician.getByText('SH-2214 is out of PEEN-01.').waitFor(slow);
    await technician.getByRole('button', { name: 'Put media in' }).click(slow);
    const dialog = technician.getByRole('dialog');
    await dialog.getByRole('button', { name: /Machine/ }).click();
    await technician.getByRole('option', { name: /PEEN-01/ }).click();
    for (const [label, text] of [
      ['Our code', 'SH-2300'],
      ['Size', 'S170'],
      ['Supplier', shot.supplier],
      ['Supplier’s lot', 'MS-71020'],
      ['Certificate', 'C-71020'],
      ['Broken or deformed at most', '12'],
      ['In a field of', shot.limits.field],
      ['A check holds', '30'],
    ])
      await dialog.getByLabel(label ?? '', { exact: true }).fill(text ?? '');
    const sieves = shot.limits.sieves.map(({ name, low = '', high = '' }) => `${name}, ${low}, ${high}`);
    await dialog.getByRole('textbox', { name: 'Sieves' }).fill(sieves.join('\n'));
    await looksRight(technician, 'peening-media-in');
    await dialog.getByRole('button', { name: 'Put it on record' }).click();
    await technician.getByText('not checked yet').first().waitFor(slow);
  }, 120_000);
});
