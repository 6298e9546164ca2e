import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { demoPin } from '../../seed/data/people.ts';
import { readsOf } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { day } from '../support/days.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('what a shop keeps to work by', () => {
  let shop: ShopApp;
  let browser: Browser;
  let inspector: Page;
  let manager: Page;

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    browser = await openBrowser();
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
    manager = await pageOf(browser, shop, { signInName: 'manager' });
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  /** No accessibility fault, and a picture kept. */
  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `administration-${name}`);
  }
  const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click(slow);
  const answer = (page: Page, name: string) =>
    page.getByRole('dialog').getByRole('button', { name, exact: true }).click(slow);
  const refused = (page: Page, text: string | RegExp) =>
    page.getByRole('dialog').getByRole('alert').getByText(text).first().waitFor(slow);

  test('says what comes first while no unit was ever booked in, to each role its own, and marks one page as current', async () => {
    const steps = manager.getByRole('complementary', { name: 'A new shop: what comes first' });
    await steps.getByRole('link', { name: 'Book the first unit in.' }).waitFor(slow);
    await inspector.goto('/inspection');
    const others = inspector.getByRole('complementary', { name: 'A new shop: what comes first' });
    await others.getByText('Add the instruments with their calibration dates.').waitFor(slow);
    expect(await others.getByRole('link', { name: 'Book the first unit in.' }).count()).toBe(0);
    await looksRight(inspector, 'first-steps');
    await manager.goto('/desk/book-in');
    await manager.getByRole('heading', { level: 1 }).waitFor(slow);
    expect(await manager.locator('nav [aria-current="page"]').allTextContents()).toEqual(['Book in']);
    await press(manager, 'Understood');
    await steps.waitFor({ ...slow, state: 'detached' });
  }, 60_000);

  test('the inspector reads a revision and signs that it is current, not before the day has come', async () => {
    await inspector.goto('/manuals');
    await inspector.getByRole('link', { name: 'QOM-301' }).click(slow);
    await inspector
      .getByRole('link', { name: /^Revision/ })
      .first()
      .click(slow);
    await inspector.getByRole('row', { name: /piston O-ring.*Q301-12/ }).waitFor(slow);
    await looksRight(inspector, 'kit-list');
    await inspector.getByRole('tab', { name: /Routes and limits/ }).click();
    await inspector.getByText('Aluminium blade', { exact: true }).click(slow);
    await inspector.getByText('width at 18 in').first().waitFor(slow);
    await looksRight(inspector, 'routes');
    await inspector.getByRole('tab', { name: 'Time between overhauls' }).click();
    await inspector.getByText('every application').first().waitFor(slow);
    await press(inspector, 'Check its currency');
    await inspector.getByLabel('Checked on').fill(day(9));
    await answer(inspector, 'Go on to sign');
    await inspector.getByLabel('Your PIN').fill(demoPin);
    await press(inspector, /^Sign as/);
    await refused(inspector, /is still to come/);
    await inspector.getByLabel('Checked on').fill(day(-1));
    await answer(inspector, 'Go on to sign');
    await inspector.getByLabel('Your PIN').fill(demoPin);
    await press(inspector, /^Sign as/);
    await inspector.getByText(/is signed as current/).waitFor(slow);
  }, 90_000);

  test('a revision that says the same supersedes the one before; a wrong file is refused by line', async () => {
    await manager.goto('/manuals');
    await manager.getByRole('link', { name: 'QOM-301' }).click(slow);
    await press(manager, 'Enter a revision');
    await manager.getByLabel('Revision', { exact: true }).fill('9');
    await manager.getByLabel('Issued on').fill(day(-3));
    await manager.getByText('What stands in a file').click();
    const saved = manager.waitForEvent('download');
    await press(manager, /Save what revision/);
    const content = JSON.parse(await text(await (await saved).createReadStream()));
    content.models[0].kitList[2].part = 'NONE-1';
    const chosen = manager.waitForEvent('filechooser');
    await press(manager, 'Choose the changed file');
    await (await chosen).setFiles({
      name: 'changed.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(content)),
    });
    await manager.getByText(/changed\.json/).waitFor(slow);
    await answer(manager, 'Make it current');
    await refused(manager, /model 1, kit list line 3, part/);
    await looksRight(manager, 'revision-refused');
    await manager.getByText(/The same as revision/).click();
    await answer(manager, 'Make it current');
    await manager.getByText(/Revision 9 of QOM-301 is current/).waitFor(slow);
    const row = await readsOf(shop).manualRevision.findFirstOrThrow({
      where: { state: 'current', manual: { number: 'QOM-301' } },
      include: { kitList: true },
    });
    expect([row.revision, row.kitList.length]).toEqual(['9', content.models[0].kitList.length]);
  }, 90_000);

  test('the most overdue gauge stands first and comes back by its calibration', async () => {
    await inspector.goto('/instruments');
    const first = inspector.getByRole('table', { name: 'Instruments' }).getByRole('row').nth(1);
    await first.getByText('overdue: do not use').waitFor(slow);
    await first.getByRole('link').click();
    await press(inspector, 'Record a calibration');
    await inspector.getByLabel('Calibrated on').fill(day(-1));
    await inspector.getByLabel('Good until').fill(day(-2));
    await answer(inspector, 'Record the calibration');
    await refused(inspector, /The last good day lies after the day of calibration/);
    await inspector.getByLabel('Good until').fill(day(364));
    await looksRight(inspector, 'calibration');
    await answer(inspector, 'Record the calibration');
    await inspector.getByRole('region', { name: 'CAL-02' }).getByText('in calibration').waitFor(slow);
    await press(inspector, 'Add an instrument');
    await inspector.getByLabel('Tag', { exact: true }).fill('cal-01');
    await press(inspector, /Choose Kind/);
    await inspector.getByRole('option', { name: 'caliper' }).click();
    await inspector.getByLabel('Instrument', { exact: true }).fill('Caliper');
    await inspector.getByLabel('Calibrated on').fill(day(-1));
    await inspector.getByLabel('Good until').fill(day(364));
    await answer(inspector, 'Add the instrument');
    await refused(inspector, /Tag: This is taken already/);
    await answer(inspector, 'Cancel');
  }, 90_000);

  test('a model is added by the manager with what it is fitted to and its flat rate', async () => {
    await manager.goto('/models');
    await press(manager, 'Add a model');
    await manager.getByLabel('Designation').fill('Q3C-80');
    await manager.getByLabel('Maker', { exact: true }).fill('Quillon');
    await manager.getByLabel('Manual it goes by').fill('QOM-301');
    await manager.getByRole('option', { name: /QOM-301/ }).click(slow);
    await press(manager, /Choose Blades are of/);
    await manager.getByRole('option', { name: 'aluminium' }).click();
    await press(manager, /Choose Pitch/);
    await manager.getByRole('option', { name: 'constant speed' }).click();
    await manager.getByLabel('Blades', { exact: true }).fill('1');
    await answer(manager, 'Add the model');
    await refused(manager, /A propeller has at least two blades/);
    await manager.getByLabel('Blades', { exact: true }).fill('3');
    await looksRight(manager, 'add-model');
    await answer(manager, 'Add the model');
    const sheet = manager.getByRole('region', { name: 'Q3C-80' });
    await sheet.getByRole('button', { name: 'Add an aircraft type' }).click(slow);
    await manager.getByLabel('Airframe').fill('Heronby Pinnace');
    await manager.getByLabel('Engine').fill('Brindle B-360');
    await manager.getByLabel('Approved by').fill('DTC-140');
    await answer(manager, 'Add the aircraft type');
    await sheet.getByText('Heronby Pinnace').waitFor(slow);
    await sheet.getByRole('button', { name: 'Set a flat rate' }).click(slow);
    await press(manager, /Choose What is asked for/);
    await manager.getByRole('option', { name: 'Overhaul', exact: true }).click();
    await manager.getByLabel('Labour').fill('33.5');
    await manager.getByLabel('Price of it').fill('4100');
    await answer(manager, 'Set the flat rate');
    await sheet.getByText('$4,100.00').waitFor(slow);
    await looksRight(manager, 'model');
  }, 120_000);

  test.each(['manuals', 'models', 'instruments', 'administration/shop'])(
    '%s has no accessibility fault in the dark on a tablet',
    async (path) => {
      await manager.emulateMedia({ colorScheme: 'dark' });
      await manager.setViewportSize({ width: 1180, height: 820 });
      await manager.goto(`/${path}`);
      await manager.getByRole('heading', { level: 1 }).waitFor(slow);
      await looksRight(manager, `${path.replace(/\W+/g, '-')}-dark`);
    },
    60_000,
  );
});

async function text(stream: NodeJS.ReadableStream): Promise<string> {
  let all = '';
  for await (const part of stream) all += String(part);
  return all;
}
