import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Locator, Page } from 'playwright-core';
import { chargeCylinder } from '../../seed/data/manuals/quillon-4-blade.ts';
import { shimBladeRoots } from '../../seed/data/manuals/sablewing-5-blade.ts';
import { nuts, torqued } from '../../seed/data/manuals/shapes.ts';
import { openBrowser } from '../support/browser.ts';
import type { Job } from '../support/job.ts';
import { jobWithSteps } from '../support/job-with-steps.ts';
import { looksRight, signsWithPin } from '../support/looks.ts';
import { ShopApp } from '../support/shop-app.ts';
import { builtDashboard, pageOf } from '../support/view-page.ts';

const slow = { timeout: 20_000 };
const torque = torqued('Torque hub nuts', 20, {
  unit: 'ft-lb',
  materials: ['LM-AS1'],
  groups: [nuts('hub nut', 6, { low: '48', high: '54', order: [1, 4, 2, 5, 3, 6], safety: 'safety wire' })],
});

describe('torque, charge and shims on a tablet', () => {
  let shop: ShopApp;
  let browser: Browser;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    job = await jobWithSteps(shop, 'T6001', [torque, chargeCylinder, shimBladeRoots]);
    const antiSeize = await job.reads.part.findUniqueOrThrow({ where: { number: 'LM-AS1' } });
    await job.onShelf(antiSeize.id, 40);
    browser = await openBrowser();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  async function open(title: string): Promise<Page> {
    const page = await pageOf(browser, shop, { signInName: 'tech', width: 1180, height: 820 });
    const { travelerId } = await job.nextAt('blade 1');
    await page.goto(`/travelers/${travelerId}`);
    await page.getByRole('heading', { name: title }).first().waitFor(slow);
    return page;
  }
  const pick = async (page: Page, label: RegExp, choice: RegExp) => {
    await page.getByRole('button', { name: label }).click();
    await page.getByRole('option', { name: choice }).first().click();
  };
  const sign = async (page: Page) => {
    await page.getByRole('button', { name: 'Done and good: sign' }).click();
    await signsWithPin(page);
  };
  /** The whole sheet in one picture, as wide as the tablet is. */
  const seen = async (page: Page, name: string) => {
    await page.setViewportSize({ width: 1180, height: 2_000 });
    await looksRight(page, name);
    await page.setViewportSize({ width: 1180, height: 820 });
  };
  const choose = (where: Page | Locator, text: string) => where.getByText(text, { exact: true }).click();

  test('the wrench’s setting goes by its adapter, and only the next nut can be ticked', async () => {
    const page = await open('Torque hub nuts');
    await page.getByText('whether an adapter is on the wrench for hub nut is not said').waitFor(slow);
    await page.getByText('Threads dry, as I see them').click();
    await choose(page, 'Adapter makes the wrench longer');
    await page.getByLabel('Lever of the wrench').fill('10');
    await page.getByRole('textbox', { name: /^Adapter/ }).fill('1.5');
    await page.getByText('20.9 to 23.4 ft-lb').waitFor(slow);
    const half = page.getByRole('group', { name: '50 %', exact: true });
    expect(await half.getByRole('checkbox', { disabled: true }).count()).toBe(6);
    await half.getByLabel('Wrench set to').fill('26');
    await half.getByText(/the wrench was set to 26 ft-lb; 20.9 to 23.4 is asked for/).waitFor(slow);
    await half.getByLabel('Wrench set to').fill('22');
    await half.getByText('the torque asked for at the nut').waitFor(slow);
    expect(await half.getByRole('checkbox', { name: 'hub nut 2' }).isDisabled()).toBe(true);
    for (const number of [1, 4, 2]) await choose(half, `hub nut ${number}`);
    await page.getByText('hub nut 5 is not torqued at 50 %').waitFor(slow);
    await half.getByRole('img', { name: 'hub nut, 50 %: 3 of 6 tightened, next is 5' }).scrollIntoViewIfNeeded();
    await seen(page, 'torque-half');

    for (const number of [5, 3, 6]) await choose(half, `hub nut ${number}`);
    const passes = async (name: string, setting: string) => {
      const pass = page.getByRole('group', { name, exact: true });
      await pass.getByLabel('Wrench set to').fill(setting);
      for (const number of [1, 4, 2, 5, 3, 6]) await choose(pass, `hub nut ${number}`);
    };
    await passes('100 %', '44');
    // Not before it was cycled.
    await page.getByText(/Torqued again only after cycling 10 times, which is not confirmed/).waitFor(slow);
    const again = page.getByRole('group', { name: 'hub nut, again after cycling', exact: true });
    await again.getByLabel('Wrench set to').fill('44');
    expect(await again.getByRole('checkbox', { disabled: true }).count()).toBe(6);
    await page.getByLabel('Cycled on air').fill('10');
    await passes('hub nut, again after cycling', '44');
    const safetied = page.getByRole('group', { name: /Safetied with safety wire/ });
    for (const number of [1, 2, 3, 4, 5]) await choose(safetied, `hub nut ${number}`);
    await page.getByText('Not safetied with safety wire: hub nut 6').waitFor(slow);
    await safetied.scrollIntoViewIfNeeded();
    await seen(page, 'torque-safetied');
    await choose(safetied, 'hub nut 6');
    await page.getByText('good as entered').waitFor(slow);
    await pick(page, /torque wrench/i, /TRQ-02/);
    await page
      .getByText(/LM-AS1, not from/)
      .first()
      .click();
    await sign(page);
    await page.getByRole('heading', { name: 'Charge the cylinder' }).first().waitFor(slow);
    await page.context().close();
  }, 120_000);

  test('the pressure wanted is said for the temperature read, and never outside of the table', async () => {
    const page = await open('Charge the cylinder');
    expect(await page.getByLabel('Pressure', { exact: true }).inputValue()).toBe('');
    await choose(page, 'dry nitrogen');
    await page.getByLabel('Temperature').fill('21');
    await page
      .getByText(/21 °C would be inside: look at the unit/)
      .first()
      .waitFor(slow);
    await page.getByLabel('Temperature').fill('65');
    await page.getByText('77.0 psi').waitFor(slow);
    await page.getByLabel('Settled before it was read').fill('30');
    await page.getByLabel('Pressure', { exact: true }).fill('538');
    await page.getByText(/538 kPa would be inside: look at the unit of the gauge/).waitFor(slow);
    await seen(page, 'charge-doubted');
    await page.getByLabel('Pressure', { exact: true }).fill('78');
    await page.getByText('good as entered').waitFor(slow);
    await pick(page, /pressure gauge/i, /GAU-01/);
    await sign(page);
    await page.getByRole('heading', { name: 'Shim the blade roots' }).first().waitFor(slow);
    await page.context().close();
  }, 90_000);

  test('shims are proposed from what was measured; what was fitted is typed', async () => {
    const page = await open('Shim the blade roots');
    await page.getByText('blade 1: socket depth is not measured').waitFor(slow);
    const blade = page.getByRole('group', { name: 'Blade 1', exact: true });
    await blade.getByLabel('Socket depth').fill('2.5005');
    await blade.getByLabel('Bearing cartridge height').fill('1.8510');
    await blade.getByLabel('Root flange thickness').fill('0.6260');
    await blade.getByText('2 × 0.010 + 1 × 0.005 = 0.025').waitFor(slow);
    expect(await blade.getByLabel('Shims of 0.010').inputValue()).toBe('');
    await blade.getByLabel('Shims of 0.010').fill('2');
    await blade.getByLabel('Shims of 0.005').fill('1');
    await blade.getByLabel('Torque to turn the blade').fill('55');
    await page.getByText('blade 2: socket depth is not measured').waitFor(slow);
    await seen(page, 'shims');
    await page.context().close();
  }, 90_000);
});
