import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { installFromTray } from '../../apps/server/src/modules/kits/install-from-tray.command.ts';
import { issueLot } from '../../apps/server/src/modules/kits/issue-lot.command.ts';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { fourBlade } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { Job } from '../support/job.ts';
import { looksRight, signsWithPin } from '../support/looks.ts';
import { pin } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

/** The page has no accessibility fault; the picture kept is of the drawing. */
async function drawn(page: Page, name: string): Promise<void> {
  await looksRight(page, name);
  await page.locator('.propeller-front').evaluate((front) => front.scrollIntoView({ block: 'center' }));
  await picture(page, name);
}

describe('the balance stand on a tablet', () => {
  let shop: ShopApp;
  let browser: Browser;
  let job: Job;
  let page: Page;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    job = await Job.arrived(shop, 'SB3001');
    await job.inWork();
    await job.takenOff();
    await job.signed('repair');
    await job.filled();
    for (
      let step = await job.nextAt('assembly');
      step.process !== 'static-balance';
      step = await job.nextAt('assembly')
    )
      await job.sign(step);
    const line = await job.reads.kitLine.findFirstOrThrow({
      where: { kitId: job.kitId, part: { number: 'Q-BW-1' } },
    });
    const put = { kitId: job.kitId, lineId: line.id, lotCode: await job.onShelf(line.partId, 4), quantity: 4 };
    await shop.run(issueLot, put, job.people.clerk);
    await shop.run(installFromTray, put, job.people.technician);
    browser = await openBrowser();
    page = await pageOf(browser, shop, { signInName: 'tech', width: 1180, height: 820 });
  }, 240_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  const group = (title: string) => page.getByRole('group', { name: title });
  const read = async (title: string, side: string, levelled?: { weight: string; radius: string }) => {
    await group(title).getByText(side, { exact: true }).click();
    if (!levelled) return;
    await group(title).getByLabel('Levelled by').fill(levelled.weight);
    await group(title).getByLabel('At a radius of').fill(levelled.radius);
  };

  test('two readings propose whole washers in the places there are, drawn from the front', async () => {
    await page.goto(`/travelers/${(await job.nextAt('assembly')).travelerId}`);
    await page.getByText('45 g-in may be left each way, by the manual.').waitFor(slow);
    await read('Blade 1 up, as it stands', 'The right is heavy', { weight: '24', radius: '5' });
    await read('Blade 1 to the right, level, as it stands', 'Level');
    // 31.2 g-in a washer: W5 at 270° straight across, W4 and W6 beside it.
    await page.getByText('In all it would have 4 × Q-BW-1 at W5').waitFor(slow);
    expect(await page.getByLabel('W5, Q-BW-1').inputValue()).toBe('');
    await drawn(page, 'static-balance-proposed');
  }, 90_000);

  test('what was put on is drawn, judged and signed', async () => {
    await page.getByLabel('W5, Q-BW-1').fill('4');
    await read('Blade 1 up, with its weights', 'The left is heavy', { weight: '1', radius: '5' });
    await read('Blade 1 to the right, level, with its weights', 'Level');
    await page.getByText('good as entered').waitFor(slow);
    await drawn(page, 'static-balance-good');
    for (const what of ['Paint finished', 'Boots on', 'Decals on']) await page.getByText(what, { exact: true }).click();
    await page.getByRole('button', { name: /Instrument used/ }).click();
    await page
      .getByRole('option', { name: /calibrated until/ })
      .first()
      .click();
    await page.getByRole('button', { name: 'Done and good: sign' }).click();
    await signsWithPin(page);
    await page.getByText('“Static balance, vertical and horizontal” is signed.').waitFor(slow);
  }, 90_000);

  test('a touch-up of paint is signed where it is done, and brings the balance back', async () => {
    await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    const painter = await pageOf(browser, shop, { signInName: 'maren', width: 1180, height: 820 });
    await painter.goto(`/build/${job.id}`);
    await painter.getByRole('button', { name: 'Touch up paint' }).click(slow);
    await painter.getByLabel('Where').fill('blade 2, 30 in');
    await painter.getByLabel('Paint, with its lot').fill('grey, lot P-14');
    await painter.getByLabel('Why').fill('scratched at the hoist');
    await looksRight(painter, 'touch-up');
    await painter.getByRole('button', { name: 'Go on to sign' }).click();
    await signsWithPin(painter);
    await painter.getByText(/Back on the traveler: Static balance, vertical and horizontal, again/).waitFor(slow);
    expect(await job.nextAt('assembly')).toMatchObject({ process: 'static-balance', phase: 'build' });
  }, 90_000);
});

describe('blades matched by static moment, as an inspector sees them', () => {
  let shop: ShopApp;
  let browser: Browser;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    job = await Job.arrived(shop, 'SB4101', await fourBlade(shop, 'SB4101'));
    await job.inWork();
    for (const [i, value] of ['397.0', '397.2', '398.2', '398.1'].entries()) {
      const position = `blade ${i + 1}`;
      let step = await job.nextAt(position);
      for (; step.title !== 'Measure static moment'; step = await job.nextAt(position)) await job.sign(step);
      const values = [{ measureId: step.measures[0]?.id ?? '', value }];
      await shop.run(signStep, await job.entryFor(step, values), job.people.technician);
    }
    browser = await openBrowser();
  }, 240_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  test('the set is drawn with what another order would leave', async () => {
    const page = await pageOf(browser, shop, { signInName: 'inspector', width: 1180, height: 820 });
    await page.goto(`/work-orders/${job.id}?tab=dimensions`);
    await page.getByText(/Around the hub in the order blade 1, blade 3, blade 2, blade 4/).waitFor(slow);
    await page
      .getByText(/blade 1 and blade 3 differ by 1\.2/)
      .first()
      .waitFor(slow);
    await drawn(page, 'blade-moments');
  }, 90_000);
});
