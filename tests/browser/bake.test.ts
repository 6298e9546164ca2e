import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { demoPin } from '../../seed/data/people.ts';
import { fourBladeWithCounterweights } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { Job } from '../support/job.ts';
import { looksRight } from '../support/looks.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { ShopApp } from '../support/shop-app.ts';
import { builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };
const hour = 3_600_000;

describe('a relief bake at the bench', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let browser: Browser;
  let job: Job;
  let platedAt: number;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock, dashboardFolder: builtDashboard });
    job = await Job.arrived(shop, 'B4201', await fourBladeWithCounterweights(shop, 'B4201'));
    await job.inWork();
    for (const position of ['counterweight 1', 'counterweight 2'])
      await shop.run(signStep, await job.entryFor(await job.nextAt(position)), job.people.technician);
    platedAt = clock.now().getTime();
    browser = await openBrowser();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  /** The technician's tablet, at the shop's moved time. */
  async function tablet(): Promise<Page> {
    const page = await pageOf(browser, shop, { signInName: 'tech', width: 1180, height: 820 });
    await page.clock.setFixedTime(clock.now());
    return page;
  }
  const open = async (page: Page, position: string) => {
    const { travelerId } = await job.nextAt(position);
    await page.goto(`/travelers/${travelerId}`);
    await page.getByLabel('The oven’s chart').waitFor(slow);
  };
  /** A line of the chart so many hours after plating, as the device of the page writes its time. */
  const local = (page: Page, hours: number) =>
    page.evaluate(
      (at) => {
        const time = new Date(at);
        return new Date(at - time.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
      },
      platedAt + hours * hour,
    );
  /** The chart of an oven run begun so many hours after plating. */
  const chart = async (page: Page, begun: number) => {
    const lines = [
      [begun, 75],
      [begun + 1, 375],
      [begun + 24.5, 375],
      [begun + 25, 120],
    ] as const;
    const rows: string[] = [];
    for (const [at, temperature] of lines) rows.push(`${(await local(page, at)).replace('T', ' ')} ${temperature}`);
    await page.getByLabel('The oven’s chart').fill(rows.join('\n'));
  };
  const sign = async (page: Page) => {
    await page.getByRole('button', { name: 'Done and good: sign' }).click();
    await page.getByLabel('Your PIN').fill(demoPin);
    await page.getByRole('button', { name: /^Sign as/ }).click();
    await page.getByText('Chromate').first().waitFor(slow);
  };

  test('the bench counts down to the last beginning, and every page calls out before it', async () => {
    clock.seconds += 2.5 * 3_600;
    const page = await tablet();
    await page.goto('/bench?process=plating');
    await page.getByText('Relief bake').first().waitFor(slow);
    expect(await page.getByText(/^the bake begins within 1 h \d+ min, by/).count()).toBeGreaterThanOrEqual(2);
    expect(await page.getByRole('status', { name: 'Bakes that must begin' }).count()).toBe(0);
    clock.seconds += 0.75 * 3_600;
    await page.clock.setFixedTime(clock.now());
    await page.goto('/account');
    await page.getByText(/^Bake within 4\d min, counterweight 1 and 1 more/).waitFor(slow);
    await looksRight(page, 'bake-alarm');
    clock.seconds += 0.5 * 3_600;
    await page.clock.setFixedTime(clock.now());
    await page.goto('/bench?sheet=bakes');
    await page.getByText(/^BAKE NOW: 1\d min/).waitFor(slow);
    await page
      .getByText(/^BAKE NOW: begins within 1\d min, by/)
      .first()
      .waitFor(slow);
    await looksRight(page, 'bake-list');
  }, 90_000);

  test('begun at the oven the deadline stops and the hold runs; its chart is drawn, judged and signed', async () => {
    const page = await tablet();
    await open(page, 'counterweight 1');
    await page.getByRole('button', { name: /^It goes into the oven/ }).click();
    await page.getByLabel('Oven', { exact: true }).fill('Oven 1');
    await looksRight(page, 'bake-begin');
    await page.getByRole('button', { name: 'It is in the oven' }).click();
    await page.getByText('in the oven', { exact: true }).first().waitFor(slow);
    await page
      .getByText(/Oven 1, since .*, may come out at .* at the earliest/)
      .first()
      .waitFor(slow);
    expect(await page.getByLabel('The bake began').count()).toBe(0);
    await page.getByText(/^BAKE NOW: 1\d min, counterweight 2/).waitFor(slow);

    clock.seconds += 27 * 3_600;
    const next = await tablet();
    await open(next, 'counterweight 1');
    await next.getByText('may come out by the clock').waitFor(slow);
    await chart(next, 3.75);
    await next.getByRole('img', { name: 'The oven’s chart against its band' }).waitFor(slow);
    await next.getByText('good as entered').waitFor(slow);
    await looksRight(next, 'bake-good');
    await next.getByText('good as entered').scrollIntoViewIfNeeded();
    await picture(next, 'bake-chart');
    await sign(next);
  }, 120_000);

  test('begun late it is put down as late, and its chart is never good', async () => {
    const page = await tablet();
    await page.goto('/bench?sheet=bakes');
    await page.getByText(/^Bake 2\d h \d+ min too late/).waitFor(slow);
    await open(page, 'counterweight 2');
    await page.getByRole('button', { name: /^It goes into the oven/ }).click();
    await page.getByText('It went in earlier').click();
    await page.getByLabel('Into the oven at').fill(await local(page, 4.5));
    await page.getByLabel('Why it is entered only now').fill('Nobody was at the tablet');
    await page.getByRole('button', { name: 'It is in the oven' }).click();
    await page
      .getByText(/^began (29|30) min too late/)
      .first()
      .waitFor(slow);
    await chart(page, 4.5);
    // The page writes whole minutes.
    await page.getByText(/The bake began (29(\.\d+)?|30) min too late/).waitFor(slow);
    await page.getByRole('button', { name: /raise a finding and sign/ }).waitFor(slow);
    await looksRight(page, 'bake-late');
  }, 120_000);
});
