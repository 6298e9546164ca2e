import { fieldBalanceOperations as op } from '@hubwright/contracts/field-balance/operations';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { courserInPlanes, readingsInPlanes, secondSensor, sheet, starterRing } from '../../seed/data/field-balance.ts';
import { demoPin } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { installed, planning, weightsOnShelf } from '../support/on-aircraft.ts';
import { as } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };
type Weights = Parameters<typeof readingsInPlanes>[1];

describe('balance in two planes, at a tablet', () => {
  let shop: ShopApp;
  let browser: Browser;
  let technician: Page;
  let inspector: Page;
  let address: string;
  let fieldBalanceId: string;
  const lots = new Map<string, string>();
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    const job = await installed(shop, 'F7301');
    for (const part of ['Q-DW-B1', 'Q-DW-B2', 'Q-DW-W1', 'Q-DW-W2'])
      lots.set(part, await weightsOnShelf(job, part, 20));
    const planned = await (await as(shop, 'front-desk')).call(op.planFieldBalance, await planning(job));
    fieldBalanceId = planned.body.id;
    address = `/on-aircraft/${fieldBalanceId}`;
    browser = await openBrowser();
    technician = await pageOf(browser, shop, { signInName: 'tech', width: 1180, height: 820 });
    inspector = await pageOf(browser, shop, { signInName: 'inspector', width: 1440, height: 900 });
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `field-balance-planes-${name}`);
  }
  const signed = async (page: Page) => {
    await page.getByLabel('Your PIN').fill(demoPin);
    await page.getByRole('button', { name: /^Sign as/ }).click();
  };
  const chosen = async (page: Page, label: RegExp, option: RegExp, at = 0) => {
    await page.getByRole('dialog').getByRole('button', { name: label }).nth(at).click();
    await page.getByRole('option', { name: option }).click();
  };
  const read = async (weights: Weights) => {
    const dialog = technician.getByRole('dialog');
    for (const [at, { rpm, amplitude, phase, second }] of readingsInPlanes(courserInPlanes, weights).entries()) {
      await dialog.getByLabel('Speed', { exact: true }).nth(at).fill(String(rpm));
      await dialog.getByLabel('Vibration', { exact: true }).nth(at).fill(amplitude);
      await dialog.getByLabel('Phase', { exact: true }).nth(at).fill(phase);
      await dialog.getByLabel('Second sensor, vibration').nth(at).fill(second.amplitude);
      await dialog.getByLabel('Second sensor, phase').nth(at).fill(second.phase);
    }
    await dialog.getByRole('button', { name: 'Put the run on record' }).click();
  };

  test('an inspector enters a model with two planes', async () => {
    await inspector.goto('/on-aircraft');
    await inspector.getByText('FB-0001').first().waitFor(slow);
    await inspector.getByRole('tab', { name: 'Places and limits' }).click(slow);
    await inspector.getByRole('button', { name: 'Enter places and limits' }).click(slow);
    const dialog = inspector.getByRole('dialog');
    await dialog.getByLabel('Model').fill('Q3C-76');
    await inspector.getByRole('option', { name: /Q3C-76/ }).click(slow);
    const filled: [label: string, text: string][] = [
      ['Document with its revision', 'QOM-301 revision 7, chapter 61-20. Demonstration data, not for use on aircraft'],
      ['Radius of the places', '6.25'],
      ['Most in one place, g', '30'],
      ['Most in all, g', '90'],
      ['Most pieces in one place', '6'],
      ['Most places used', '6'],
      ['Readings repeat within', '0.01'],
      ['Most wind, kt', '10'],
      ['Unit of vibration', 'ips'],
    ];
    for (const [label, text] of filled) await dialog.getByLabel(label, { exact: true }).fill(text);
    await chosen(inspector, /Angles count/, /^Clockwise/);
    const places = (count: number, letter: string) =>
      Array.from({ length: count }, (_, i) => `${letter}${i + 1}, ${(360 * i) / count}`).join('\n');
    await dialog.getByLabel('Places', { exact: true }).fill(places(12, 'H'));
    await dialog.getByLabel('Speed ranges').fill('1800, 2700, 0.20, 0.07');
    await dialog.getByText('The document has a second plane of places').click();
    const second: [label: string, text: string][] = [
      ['First plane is called', starterRing.planeName],
      ['Second plane is called', starterRing.planeName],
      ['Radius, second plane', '7.9'],
      ['Most in one of its places, g', '25'],
      ['Most in the plane, g', '60'],
      ['Most pieces in one of its places', '4'],
      ['Most of its places used', '4'],
      ['Places of the second plane', places(10, 'S')],
    ];
    for (const [label, text] of second) await dialog.getByLabel(label, { exact: true }).fill(text);
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signed(inspector);
    await dialog.getByText('The first plane has this name').first().waitFor(slow);
    await dialog.getByLabel('Second plane is called').fill(starterRing.secondPlane.planeName);
    await looksRight(inspector, 'data');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signed(inspector);
    await inspector.getByText(/Starter ring: 10 places counted clockwise at 7.9 in/).waitFor(slow);
  }, 120_000);

  test('a technician sets up two sensors, tries each plane, fits weights in both and signs', async () => {
    await technician.goto(address);
    await technician.getByRole('button', { name: 'Fill in the sheet before any run' }).click(slow);
    const dialog = technician.getByRole('dialog');
    await dialog.getByLabel('Off-station procedure').fill(sheet.procedure);
    await dialog.getByLabel('Wind').fill('6');
    await dialog.getByLabel('Weather').fill(sheet.weather);
    for (const point of ['chocked', 'Propeller plane', 'Cowling', 'Brakes', 'Observer'])
      await dialog.getByText(new RegExp(point)).click();
    await dialog.getByLabel('Sensor sits', { exact: true }).fill(sheet.sensorPlace);
    await chosen(technician, /Sensor axis/, /Vertical/);
    await dialog.getByLabel('Phase reference').fill(sheet.phaseReference);
    await chosen(technician, /Instrument counts phase/, /^Clockwise/);
    await chosen(technician, /^(?!.*counts).*Instrument/, /VIB-01/);
    await dialog.getByText('With one sensor only the first plane of this model is balanced.').waitFor();
    await dialog.getByText('A second sensor: both planes are balanced').click();
    await dialog.getByLabel('Second sensor sits').fill(secondSensor.sensorPlace);
    await chosen(technician, /Axis of the second sensor/, /Horizontal/);
    await looksRight(technician, 'sheet');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signed(technician);

    await technician.getByRole('button', { name: 'Put the baseline on record' }).click(slow);
    await dialog.getByRole('button', { name: 'Another speed' }).click();
    await looksRight(technician, 'baseline');
    await read([]);
    await technician.getByRole('button', { name: 'Trial run' }).click(slow);
    await dialog.getByLabel('Mass').fill('12');
    await chosen(technician, /Place/, /^H2, 30°, Spinner bulkhead/);
    await read([[0, 12, 30]]);
    await technician.getByText(/run a trial weight in each plane by itself/).waitFor(slow);
    await technician.getByRole('button', { name: 'Trial run' }).click();
    await dialog.getByLabel('Mass').fill('14');
    await chosen(technician, /Place/, /^S1, 0°, Starter ring/);
    await read([[1, 14, 0]]);
    const asked = /^Add 2[12]\.\d g at (19|2\d)° in Spinner bulkhead, 1[45]\.\d g at 1[23]\d° in Starter ring/;
    await technician.getByRole('heading', { name: asked }).waitFor(slow);
    await technician.getByRole('img', { name: 'Vibration at 2500 rpm, Engine case, rear, right' }).waitFor();
    await looksRight(technician, 'answer');

    await technician.getByRole('button', { name: 'Fit weights' }).click();
    // Places are filled in as proposed; lots and pieces are for the person to say.
    const { answer } = (await (await as(shop, 'technician')).call(op.fieldBalance, { fieldBalanceId })).body;
    const fitted = (answer?.beside.fillings ?? []).flatMap(({ place, pieces }) =>
      pieces.map(({ partNumber, count }) => ({ place, part: partNumber, pieces: count })),
    );
    const rows = dialog.getByLabel('Pieces');
    await rows.first().waitFor(slow);
    expect([fitted.length > 1, await rows.count()]).toEqual([true, fitted.length]);
    for (const [at, { part, pieces }] of fitted.entries()) {
      await chosen(technician, /From lot/, new RegExp(lots.get(part) ?? ''), at);
      await rows.nth(at).fill(String(pieces));
    }
    await dialog.getByRole('button', { name: 'Fit them' }).click();
    await technician.getByText('weights changed, run next').waitFor(slow);
    await technician.getByRole('button', { name: 'Run with the weights as they stand' }).click();
    await read(
      (answer?.beside.fillings ?? []).map(({ place, mass }) => {
        const [plane, step] = place.startsWith('H') ? ([0, 30] as const) : ([1, 36] as const);
        return [plane, mass, step * (Number(place.slice(1)) - 1)] as const;
      }),
    );
    await technician.getByRole('button', { name: 'It is balanced: sign' }).waitFor(slow);
    // Each place is drawn in its own plane, with the letter of the lot that sits in it.
    const inRing = fitted.find(({ place }) => place.startsWith('S'))?.part ?? '';
    const key = technician.locator('figcaption', { hasText: /^Starter ring/ });
    const letter = new RegExp(`(\\w) ${lots.get(inRing)}`).exec((await key.textContent()) ?? '')?.[1] ?? '?';
    await technician
      .getByRole('img', { name: /^Starter ring of/ })
      .locator('text', { hasText: new RegExp(`g .*${letter}`) })
      .first()
      .waitFor();
    await looksRight(technician, 'balanced');
    await technician.getByRole('button', { name: 'It is balanced: sign' }).click();
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signed(technician);
    await technician.getByText('balanced, to be released').waitFor(slow);

    await inspector.goto(address);
    await inspector.getByRole('button', { name: 'Release with the log entry' }).click(slow);
    await inspector.getByText(/Dynamic weights standing: Spinner bulkhead H\d+ .* Starter ring S\d+ /).waitFor(slow);
    await signed(inspector);
    await inspector.getByRole('link', { name: 'Print the record' }).waitFor(slow);
    await looksRight(inspector, 'released');
  }, 180_000);
});
