import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { disposeFinding } from '../../apps/server/src/modules/findings/dispose-finding.command.ts';
import { composite, fourBlade } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { goodValues, Job } from '../support/job.ts';
import { looksRight, signsWithPin } from '../support/looks.ts';
import { pin } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { builtDashboard, pageOf } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('blades by their dimensions', () => {
  let shop: ShopApp;
  let browser: Browser;
  let technician: Page;
  let inspector: Page;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    job = await Job.arrived(shop, 'B4001', await fourBlade(shop, 'B4001'));
    await job.tornDown();
    browser = await openBrowser();
    // The floor has tablets.
    technician = await pageOf(browser, shop, { signInName: 'tech', width: 1180, height: 820 });
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  test('a process form is filled in beside the signature', async () => {
    await job.fit('strip-tank');
    const step = await job.nextAt('blade 2');
    await technician.goto(`/travelers/${step.travelerId}`);
    await technician.getByRole('group', { name: 'Process form' }).waitFor(slow);
    expect(await technician.getByRole('button', { name: 'Done and good: sign' }).isDisabled()).toBe(true);
    await technician.getByLabel('Bath temperature').fill('140');
    await technician.getByText('Before it can be signed: time in the bath not entered.').waitFor(slow);
    await technician.getByLabel('Time in the bath').fill('25');
    await technician.getByText('Not named yet: the strip tank.').waitFor(slow);
    await technician.getByRole('button', { name: /Which strip tank/ }).click();
    await technician.getByRole('option', { name: /STRIP-1/ }).click();
    await looksRight(technician, 'dimensions-process-form');
    await technician.getByRole('button', { name: 'Done and good: sign' }).click();
    await signsWithPin(technician);
    await technician.getByText('“Strip paint and clean” is signed.').waitFor(slow);
  }, 120_000);

  test('values go into a grid of stations by Enter; one too small marks its place and becomes a finding', async () => {
    for (;;) {
      const next = await job.nextAt('blade 1');
      if (next.title === 'Measure blade by station') break;
      await job.sign(next);
    }
    const step = await job.nextAt('blade 1');
    await technician.goto(`/travelers/${step.travelerId}`);
    const first = technician.getByLabel('width at 18 in', { exact: true });
    await first.fill('7.140', slow);
    await first.press('Enter');
    expect(await technician.evaluate('document.activeElement.name')).toMatch(/^values\/\d+\/value$/);
    for (const { measureId, value } of goodValues(step)) {
      const name = step.measures.find(({ id }) => id === measureId)?.name ?? '';
      await technician.getByLabel(name, { exact: true }).fill(name === 'width at 39 in' ? '4.271' : value);
    }
    await technician.getByText('outside', { exact: true }).first().waitFor(slow);
    await looksRight(technician, 'dimensions-grid');
    await technician.getByRole('button', { name: /Instrument used/ }).click();
    await technician.getByRole('option', { name: /CAL-01/ }).click();
    await technician.getByRole('button', { name: /raise a finding and sign/ }).click();
    const dialog = technician.getByRole('dialog');
    await dialog.getByRole('button', { name: /Where on the part/ }).click();
    await technician.getByRole('option', { name: 'Tip', exact: true }).click();
    const drawing = dialog.locator('.spot-picture .pick').first();
    await drawing.scrollIntoViewIfNeeded();
    const box = await drawing.boundingBox();
    if (!box) throw new Error('The blade is not drawn');
    await technician.mouse.click(box.x + (box.width * 39) / 60, box.y + box.height * 0.15);
    await expect(dialog.getByLabel('Exactly where').inputValue()).resolves.toMatch(
      /^face side, station 3[89]\.\d, leading edge$/,
    );
    await dialog.getByLabel('What you see').fill('Eroded towards the tip');
    await looksRight(technician, 'dimensions-spot');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signsWithPin(technician);
    await technician.getByText(/is raised; an inspector decides it/).waitFor(slow);
    const finding = await job.reads.finding.findFirstOrThrow({ where: { workOrderId: job.id } });
    expect(finding.spot).toMatchObject({ on: 'blade', surface: 'face', chord: 'leading' });
    const reject = { findingId: finding.id, disposition: 'reject' as const, signature: pin };
    await shop.run(disposeFinding, reject, job.people.inspector, { version: finding.version });
    await inspector.goto('/findings');
    await inspector
      .getByRole('img', { name: `Where ${finding.number} is` })
      .waitFor(slow)
      .catch(() => undefined);
    await looksRight(inspector, 'dimensions-finding');
  }, 180_000);

  test('the set is decided on, the diameter shown, a matched set put on record, a shortening seen before it is signed', async () => {
    await inspector.goto(`/work-orders/${job.id}?tab=dimensions`);
    await inspector.getByText('holds the build').first().waitFor(slow);
    await looksRight(inspector, 'dimensions-tab');
    await inspector.getByRole('button', { name: 'Decide on the set' }).click();
    const dialog = inspector.getByRole('dialog');
    for (const [name, answer] of [
      ['blade 2', 'Stays'],
      ['blade 3', 'Rejected'],
      ['blade 4', 'Stays'],
    ] as const) {
      await dialog.getByRole('button', { name: new RegExp(name) }).click();
      await inspector.getByRole('option', { name: new RegExp(`^${answer}`) }).click();
    }
    await dialog.getByLabel('Why').fill('Matched across the hub');
    await looksRight(inspector, 'dimensions-set');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signsWithPin(inspector);
    await inspector.getByText(/^Decided; F-\d+ rejected with it/).waitFor(slow);

    await inspector.getByRole('button', { name: 'Record the set of blade 1 race halves' }).click();
    await inspector.getByLabel('Mark on the set').fill('m-11');
    await inspector.getByRole('button', { name: /How it is known/ }).click();
    await inspector.getByRole('option', { name: /^As found/ }).click();
    await inspector.getByRole('button', { name: 'Put on record' }).click();
    await inspector
      .getByText(/set M-11/)
      .first()
      .waitFor(slow);

    await inspector.getByRole('button', { name: 'Shorten every blade' }).click();
    await inspector.getByRole('button', { name: /New diameter/ }).click();
    await inspector.getByRole('option', { name: /^82.0/ }).click();
    await inspector.getByText('Q4F-84-2').first().waitFor(slow);
    await inspector.getByLabel('Why').fill('Tips eroded');
    await looksRight(inspector, 'dimensions-shortening');
    await inspector.keyboard.press('Escape');
    expect((await job.workOrder()).shortenTo).toBeNull();
  }, 180_000);

  test('a composite blade is tapped zone by zone on its map', async () => {
    const tapped = await Job.arrived(shop, 'C5001', await composite(shop, 'C5001'));
    await tapped.tornDown();
    await tapped.sign(await tapped.nextAt('blade 1'));
    const step = await tapped.nextAt('blade 1');
    await technician.goto(`/travelers/${step.travelerId}`);
    await technician.getByRole('img', { name: 'Tap map' }).waitFor(slow);
    for (const { name } of step.measures)
      await technician.getByLabel(name, { exact: true }).fill(name === 'void in zone C face middle' ? '0.80' : '0.00');
    await looksRight(technician, 'dimensions-tap-map');
    await technician.getByRole('button', { name: /raise a finding and sign/ }).waitFor(slow);
  }, 180_000);
});
