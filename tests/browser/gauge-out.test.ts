import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { demoPin } from '../../seed/data/people.ts';
import { readsOf } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('a gauge that comes back wrong', () => {
  let shop: ShopApp;
  let browser: Browser;
  let inspector: Page;
  let gauge: { id: string; tag: string };
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    const job = await Job.arrived(shop, '4641');
    await job.tornDown();
    await job.signed('evaluation');
    const { instrumentId } = await readsOf(shop).signOff.findFirstOrThrow({
      where: { workOrderId: job.id, instrumentId: { not: null } },
    });
    gauge = await readsOf(shop).instrument.findUniqueOrThrow({ where: { id: instrumentId ?? '' } });
    browser = await openBrowser();
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  async function looksRight(name: string) {
    expect(await accessibilityFaults(inspector)).toEqual([]);
    await picture(inspector, `gauge-${name}`);
  }

  test('is entered as its certificate has it; what was signed with it is listed, and decided by signature', async () => {
    await inspector.goto(`/instruments/${gauge.id}`);
    await inspector.getByRole('button', { name: 'Record a calibration' }).click(slow);
    const dialog = inspector.getByRole('dialog');
    await dialog.getByLabel('Calibrated on').fill(day(0));
    await dialog.getByLabel('Good until').fill(day(365));
    await dialog.getByLabel('Certificate', { exact: true }).fill('K-501');
    await dialog.getByRole('button', { name: 'Add a point' }).click();
    for (const [label, text] of [
      ['Nominal', '1.0000'],
      ['As found', '1.0009'],
      ['As left', '1.0001'],
      ['Error allowed', '0.0005'],
    ])
      await dialog.getByLabel(`${label}, point 1`).fill(text ?? '');
    await dialog.getByText('found out of tolerance, worst error 0.0009').waitFor(slow);
    await looksRight('calibration');
    await dialog.getByRole('button', { name: 'Record the calibration' }).click();
    await inspector.getByText(/was out of tolerance: \d+ sign-offs? made with it wait/).waitFor(slow);
    await inspector.getByRole('link', { name: /under review/ }).click(slow);
    await inspector.getByRole('table', { name: 'Readings under review' }).waitFor(slow);
    await looksRight('reviews');
    await inspector
      .getByRole('button', { name: /^Decide / })
      .first()
      .click(slow);
    await inspector.getByText('the reading stands').click();
    await inspector.getByLabel('Why').fill('The error is a tenth of the margin');
    await looksRight('deciding');
    await inspector.getByRole('button', { name: 'Go on to sign' }).click();
    await inspector.getByLabel('Your PIN').fill(demoPin);
    await inspector.getByRole('button', { name: /^Sign as/ }).click();
    await inspector.getByText('Decided: the reading stands.').waitFor(slow);
    expect(await readsOf(shop).calibrationReview.count({ where: { decision: 'stands' } })).toBe(1);
  }, 120_000);

  test('has its study: pasted from a spreadsheet, computed by both methods, drawn and told in words', async () => {
    await inspector.goto(`/instruments/${gauge.id}`);
    await inspector.getByRole('button', { name: 'Record a study' }).click(slow);
    const dialog = inspector.getByRole('dialog');
    await dialog.getByLabel('What was measured').fill('Pilot bore');
    await dialog.getByLabel('Unit').fill('in');
    await dialog.getByLabel('Tolerance').fill('0.0020');
    await dialog.getByLabel('Readings').fill('Ludo,1,1.0002\nLudo,2');
    await dialog.getByText('Line 2: appraiser, part, then readings').waitFor(slow);
    const lines = ['Ludo', 'Maren', 'Piers'].flatMap((who, at) =>
      [1, 2, 3, 4].map(
        (part) =>
          `${who}\t${part}\t${(1 + part / 1000 + at / 20_000).toFixed(5)}\t${(1 + part / 1000 + 0.0001).toFixed(5)}`,
      ),
    );
    await dialog.getByLabel('Readings').fill(lines.join('\n'));
    await dialog.getByText('3 appraisers, 4 parts, 2 trials').waitFor(slow);
    await looksRight('study-entry');
    await dialog.getByRole('button', { name: 'Keep the study' }).click();
    await inspector.getByText('is kept.').waitFor(slow);
    await inspector
      .getByText(/Pilot bore/)
      .first()
      .click(slow);
    await inspector.getByRole('img', { name: 'Shares of the spread' }).waitFor(slow);
    await inspector.getByRole('img', { name: /Ranges by appraiser/ }).scrollIntoViewIfNeeded();
    await looksRight('study');
    expect(await readsOf(shop).gaugeStudy.count()).toBe(1);
  }, 120_000);
});
