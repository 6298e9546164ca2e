import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { demoPin } from '../../seed/data/people.ts';
import { composite, fourBladeWithCounterweights } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { Job } from '../support/job.ts';
import { looksRight } from '../support/looks.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { ShopApp } from '../support/shop-app.ts';
import { builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };
const minute = 60_000;

/** One oven load of counterweights plated at different times, and the cure of a composite repair. */
describe('ovens at the bench', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let browser: Browser;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock, dashboardFolder: builtDashboard });
    browser = await openBrowser();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  async function tablet(): Promise<Page> {
    const page = await pageOf(browser, shop, { signInName: 'tech', width: 1180, height: 820 });
    await page.clock.setFixedTime(clock.now());
    return page;
  }
  /** Lines of a chart as the device of the page writes its time: minutes from its beginning, temperature, and vacuum if any. */
  const lines = (page: Page, start: number, points: readonly (readonly number[])[]) =>
    page.evaluate(
      ([from, all]) =>
        all
          .map(([minutes = 0, ...read]) => {
            const at = new Date(from + minutes * 60_000);
            const local = new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString();
            return `${local.slice(0, 16).replace('T', ' ')} ${read.join(' ')}`;
          })
          .join('\n'),
      [start, points] as const,
    );
  const signAs = async (page: Page) => {
    await page.getByLabel('Your PIN').fill(demoPin);
    await page.getByRole('button', { name: /^Sign as/ }).click();
  };

  test('a load has one chart; the part plated too early is named, taken out, and the rest is signed', async () => {
    const job = await Job.arrived(shop, 'B4301', await fourBladeWithCounterweights(shop, 'B4301', 3));
    await job.inWork();
    const plate = async (...positions: string[]) => {
      for (const position of positions)
        await shop.run(signStep, await job.entryFor(await job.nextAt(position)), job.people.technician);
    };
    await plate('counterweight 1');
    clock.seconds += 5 * 3_600;
    await plate('counterweight 2', 'counterweight 3');
    const page = await tablet();
    await page.goto('/bench?sheet=loads');
    await page.getByRole('button', { name: 'Put a load together' }).click();
    for (const n of [1, 2, 3]) await page.getByText(new RegExp(`counterweight ${n}, .*: Relief bake`)).click();
    await page.getByLabel('Tank, oven or cabinet').fill('Oven 1');
    await page.getByRole('button', { name: /^Start the load/ }).click();
    await page.getByRole('button', { name: /^It goes into the oven: LD-/ }).click();
    await page.getByRole('button', { name: 'It is in the oven' }).click();
    await page
      .getByText(/^began 1 h \d* ?(min )?too late/)
      .first()
      .waitFor(slow);
    const begun = clock.now().getTime();

    clock.seconds += 25 * 3_600;
    const next = await tablet();
    await next.goto('/bench?sheet=loads');
    const points = [
      [0, 75],
      [30, 375],
      [1430, 375],
      [1460, 100],
    ];
    await next.getByLabel('The oven’s chart').fill(await lines(next, begun, points));
    await next.getByText(/counterweight 1: The bake began .* min too late\. Take it out\./).waitFor(slow);
    expect(await next.getByRole('button', { name: 'All of it is done and good: sign' }).isDisabled()).toBe(true);
    await looksRight(next, 'ovens-load');
    await next.getByText(/Take it out\./).scrollIntoViewIfNeeded();
    await picture(next, 'ovens-load-late');
    await next
      .getByRole('button', { name: /^Take out TR-/ })
      .first()
      .click();
    await next.getByLabel('Why, in one line').fill('Began too late for it');
    await next.getByRole('button', { name: 'Take it out' }).click();
    await next.getByText('good as entered, for every part').waitFor(slow);
    await next.getByRole('button', { name: 'All of it is done and good: sign' }).click();
    await signAs(next);
    await next
      .getByText(/is signed for 2 parts/)
      .first()
      .waitFor(slow);
  }, 240_000);

  test('a cure is drawn against its profile; heated too fast it is not good, as it should be it is signed', async () => {
    const job = await Job.arrived(shop, 'C5201', await composite(shop, 'C5201'));
    await job.inWork();
    for (let step = await job.nextAt('blade 1'); step.title !== 'Cure the repair'; step = await job.nextAt('blade 1'))
      await job.sign(step);
    clock.seconds += 4 * 3_600;
    const page = await tablet();
    const { travelerId, id } = await job.nextAt('blade 1');
    await page.goto(`/travelers/${travelerId}`);
    await page
      .getByText(/LM-PR7/)
      .first()
      .waitFor(slow);
    await page
      .getByText(/240 h of out-time left now/)
      .first()
      .waitFor(slow);
    const field = page.getByRole('textbox', { name: 'The chart of the cure' });
    const start = clock.now().getTime() - 190 * minute;
    const fast = [
      [0, 70, 26],
      [20, 250, 25],
      [125, 252, 25],
      [160, 130, 24],
    ];
    await field.fill(await lines(page, start, fast));
    await page.getByText(/^Heated at 9 °F\/min/).waitFor(slow);
    await page.getByText(/^Heated at/).scrollIntoViewIfNeeded();
    await looksRight(page, 'ovens-cure-fast');
    await field.fill(
      await lines(
        page,
        start,
        fast.map(([at = 0, ...read]) => [
          at,
          ...read.map((value) => (value > 100 ? Math.round((value - 32) / 1.8) : value)),
        ]),
      ),
    );
    await page
      .getByText(/look at the unit of the recorder/)
      .first()
      .waitFor(slow);
    await page.getByText(/^I looked at the recorder again/).waitFor(slow);

    await field.fill(
      await lines(page, start, [
        [0, 70, 26],
        [40, 248, 25],
        [140, 252, 25],
        [175, 130, 24],
      ]),
    );
    await page.getByText('good as entered').waitFor(slow);
    await page.getByRole('img', { name: 'The chart of the cure against its profile' }).waitFor(slow);
    await page.getByText('good as entered').scrollIntoViewIfNeeded();
    await picture(page, 'ovens-cure-good');
    await page.getByRole('button', { name: 'Done and good: sign' }).click();
    await signAs(page);
    await page.getByRole('img', { name: 'Tap map' }).waitFor(slow);
    await page.goto(`/travelers/${travelerId}?step=${id}`);
    await page.getByRole('img', { name: 'The oven’s chart as signed' }).waitFor(slow);
    await looksRight(page, 'ovens-cure-signed');
  }, 240_000);
});
