import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Locator, Page } from 'playwright-core';
import { demoPin } from '../../seed/data/people.ts';
import { atTheAngles } from '../support/at-the-angles.ts';
import { openBrowser } from '../support/browser.ts';
import type { Job } from '../support/job.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('angles and tests of a built propeller at the bench', () => {
  let shop: ShopApp;
  let browser: Browser;
  let builder: Page;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    job = await atTheAngles(shop, 'QA9901');
    browser = await openBrowser();
    builder = await pageOf(browser, shop, { signInName: 'tech', width: 1180, height: 820 });
  }, 240_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  async function looksRight(name: string, at?: Locator) {
    expect(await accessibilityFaults(builder)).toEqual([]);
    await at?.scrollIntoViewIfNeeded();
    await picture(builder, `built-${name}`);
  }
  const choose = async (label: RegExp, option: RegExp) => {
    await builder.getByRole('button', { name: label }).click();
    await builder.getByRole('option', { name: option }).click();
  };
  const withPin = async () => {
    await builder.getByLabel('Your PIN').fill(demoPin);
    await builder.getByRole('button', { name: /^Sign as/ }).click();
  };
  const sign = async (button: string) => {
    await builder.getByRole('button', { name: button }).click();
    await withPin();
  };
  const angle = (blade: number, stop: string) => builder.getByLabel(`Blade ${blade}, ${stop} stop, degrees`);

  test('angles are typed blade by blade: what is out is said and drawn at once, and nothing is filled in beforehand', async () => {
    const { travelerId } = await job.nextAt('assembly');
    await builder.goto(`/travelers/${travelerId}`);
    await builder.getByText('Blades move with force when cycled on air').waitFor(slow);
    expect(await angle(1, 'low').inputValue()).toBe('');
    await builder.getByLabel('Cycled on air before reading').fill('10');
    for (const [blade, low, high] of [
      [1, '13.35', '29.0'],
      [2, '13.75', '29.1'],
      [3, '13.40', '28.9'],
    ] as const) {
      await angle(blade, 'low').fill(low);
      await angle(blade, 'high').fill(high);
    }
    await builder.getByText('outside by 0.15°').waitFor(slow);
    await builder
      .getByText(/Blade 2 at the low stop: 13.75°; 13.2° to 13.6° is asked for, 0.15° too much/)
      .waitFor(slow);
    await looksRight('angles-out', builder.getByRole('button', { name: 'The test failed: reopen the build' }));
    await angle(2, 'low').fill('0.2339');
    await builder.getByText('cannot be read so').first().waitFor(slow);
    await angle(2, 'low').fill('13.45');
    await choose(/Instrument used/, /PRO-01/);
    await builder.getByText('good as entered').waitFor(slow);
    await looksRight('angles-good', builder.getByRole('img', { name: /Blade angles at the stops/ }));
    await sign('Done and good: sign');
    await builder.getByText('“Set blade angles” is signed.').waitFor(slow);
  }, 120_000);

  test('signed, they are drawn from what was signed', async () => {
    const angles = await job.reads.travelerStep.findFirstOrThrow({
      where: { traveler: { workOrderId: job.id }, title: 'Set blade angles' },
    });
    await builder.goto(`/travelers/${angles.travelerId}?step=${angles.id}`);
    await builder.getByRole('img', { name: /Blade angles as signed/ }).waitFor(slow);
    await looksRight('angles-signed');
  }, 120_000);

  test('a leak test that failed reopens the build: seals and steps are offered, their cost is the shop’s', async () => {
    const { travelerId } = await job.nextAt('assembly');
    await builder.goto(`/travelers/${travelerId}`);
    await builder.getByRole('button', { name: /Tested with/ }).click(slow);
    await builder.getByRole('option', { name: 'nitrogen' }).click();
    await builder.getByLabel('Cycled under pressure').fill('5');
    await builder.getByLabel('Test pressure', { exact: true }).fill('200');
    await builder.getByLabel('Held for').fill('10');
    await builder.getByLabel('Pressure lost').fill('9.5');
    await choose(/Instrument used/, /GAU-01/);
    await looksRight('leak-failed', builder.getByText('Pressure lost', { exact: true }));
    await builder.getByRole('button', { name: 'The test failed: reopen the build' }).click();
    const dialog = builder.getByRole('dialog');
    await dialog.getByText('At the shop’s cost, never the customer’s').waitFor(slow);
    expect(await dialog.getByLabel(/blade 1 shank O-ring/).isChecked()).toBe(true);
    expect(await dialog.getByLabel(/mounting face O-ring/).isChecked()).toBe(false);
    await looksRight('reopen');
    await dialog.getByLabel('What failed, and where').fill('air at the shank of blade 2');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await withPin();
    await builder.getByText(/The build is open again: \d+ steps to do, \d+ seals to replace/).waitFor(slow);
    await builder
      .getByText(/Assemble hub, pitch change and blades, again after the failed leak test/)
      .first()
      .waitFor(slow);
    await looksRight('reopened');
  }, 120_000);

  test('the order lists what the shop pays, and the parts room why it is asked again', async () => {
    await builder.goto(`/work-orders/${job.id}`);
    await builder.getByRole('heading', { name: /At the shop’s cost/ }).waitFor(slow);
    await looksRight('shop-cost', builder.getByText('“Leak test” failed').last());
    const clerk = await pageOf(browser, shop, { signInName: 'parts', width: 1180, height: 820 });
    await clerk.goto('/shortages');
    await clerk
      .getByText(/a function test failed, at the shop’s cost/)
      .first()
      .waitFor(slow);
    await picture(clerk, 'built-shortages');
  }, 120_000);

  test('play, friction and travel are a box for each blade and way', async () => {
    for (let step = await job.nextAt('assembly'); !step.title.startsWith('Play'); step = await job.nextAt('assembly'))
      await job.sign(step);
    const { travelerId } = await job.nextAt('assembly');
    await builder.goto(`/travelers/${travelerId}`);
    await builder.getByLabel('blade 2 play in-and-out, in').fill('0.041');
    await builder.getByLabel('blade 3 friction, in-lb').fill('30');
    await builder.getByLabel('Travel up').fill('-2');
    await builder.getByText('outside', { exact: true }).first().waitFor(slow);
    await builder.getByText('cannot be read so').first().waitFor(slow);
    await looksRight('play', builder.getByLabel('Travel down'));
  }, 120_000);

  test('a test signed as good that failed after all opens the build from where it is shown signed', async () => {
    const test = await job.reads.travelerStep.findFirstOrThrow({
      where: { traveler: { workOrderId: job.id }, title: { startsWith: 'Leak test' }, state: 'signed' },
    });
    await builder.goto(`/travelers/${test.travelerId}?step=${test.id}`);
    await builder.getByRole('button', { name: 'It failed after all: reopen the build' }).click(slow);
    const dialog = builder.getByRole('dialog');
    await dialog.getByRole('button', { name: /Tested with/ }).click();
    await builder.getByRole('option', { name: 'nitrogen' }).click();
    await dialog.getByLabel('Cycled under pressure').fill('5');
    await dialog.getByLabel('Test pressure', { exact: true }).fill('200');
    await dialog.getByLabel('Held for').fill('10');
    await dialog.getByRole('button', { name: /Instrument used/ }).click();
    await builder.getByRole('option', { name: /GAU-01/ }).click();
    await dialog.getByLabel('Pressure lost').fill('1');
    await dialog.getByText('Everything entered is inside its limits: that opens no build.').waitFor(slow);
    await dialog.getByLabel('Pressure lost').fill('12');
    await looksRight('failed-after-all', dialog.getByRole('button', { name: 'Go on to what is done again' }));
    await dialog.getByRole('button', { name: 'Go on to what is done again' }).click();
    await dialog.getByLabel('What failed, and where').fill('the gauge was isolated');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await withPin();
    await builder.getByText(/The build is open again/).waitFor(slow);
    await builder.getByText('corrected since').first().waitFor(slow);
    const signOffs = await job.reads.signOff.findMany({ where: { stepId: test.id }, orderBy: { signedAt: 'asc' } });
    expect(signOffs.map(({ result }) => result)).toEqual(['pass', 'fail']);
    expect(signOffs[1]?.supersedesId).toBe(signOffs[0]?.id);
  }, 120_000);
});
