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
import { builtDashboard, pageOf } from '../support/view-page.ts';

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
    await page.getByLabel('The bake began').waitFor(slow);
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
  const enter = async (page: Page, begun: number) => {
    const lines = [
      [begun, 75],
      [begun + 1, 375],
      [begun + 24.5, 375],
      [begun + 25, 120],
    ] as const;
    const rows: string[] = [];
    for (const [at, temperature] of lines) rows.push(`${(await local(page, at)).replace('T', ' ')} ${temperature}`);
    await page.getByLabel('The bake began').fill(await local(page, begun));
    await page.getByLabel('The oven’s chart').fill(rows.join('\n'));
  };

  test('the bench counts down to the last beginning', async () => {
    clock.seconds += 2.5 * 3_600;
    const page = await tablet();
    await page.goto('/bench?process=plating');
    await page.getByText('Relief bake').first().waitFor(slow);
    expect(await page.getByText(/^the bake begins within 1 h \d+ min, by/).count()).toBeGreaterThanOrEqual(2);
    await looksRight(page, 'bake-bench');
  }, 90_000);

  test('the chart is judged while it is written; a good one is signed, a late one only as failed', async () => {
    clock.seconds += 30 * 3_600;
    const page = await tablet();
    await open(page, 'counterweight 1');
    await enter(page, 3);
    await page.getByText('good as entered').waitFor(slow);
    await looksRight(page, 'bake-good');
    await page.getByRole('button', { name: 'Done and good: sign' }).click();
    await page.getByLabel('Your PIN').fill(demoPin);
    await page.getByRole('button', { name: /^Sign as/ }).click();
    await page.getByText('Chromate').first().waitFor(slow);

    await open(page, 'counterweight 2');
    await enter(page, 4.5);
    // The page writes whole minutes.
    await page.getByText(/The bake began (29(\.\d+)?|30) min too late/).waitFor(slow);
    await looksRight(page, 'bake-late');
  }, 120_000);
});
