import { governorOperations as op } from '@hubwright/contracts/governor-tests/operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { demoPin } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { atTheBench, governor } from '../support/governor-visit.ts';
import { as } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('a governor on the bench', () => {
  let shop: ShopApp;
  let browser: Browser;
  let technician: Page;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    await atTheBench(shop, 'VG9101', await governor(shop, 'Heronby Courser 4'));
    browser = await openBrowser();
    technician = await pageOf(browser, shop, { signInName: 'tobit', width: 1180, height: 820 });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  async function looksRight(name: string) {
    expect(await accessibilityFaults(technician)).toEqual([]);
    await picture(technician, `governor-${name}`);
  }
  const take = async (point: string, value: string) => {
    await technician.getByRole('button', { name: new RegExp(`^${point}`) }).click();
    await technician.getByLabel(point, { exact: true }).fill(value);
    await technician.getByLabel('Oil temperature').fill('165');
    await technician.getByRole('button', { name: 'Keep this reading' }).click();
    await technician
      .getByText(new RegExp(`${point} ${value}`))
      .first()
      .waitFor(slow);
  };

  test('is run through its points, a stop set and taken again, ended as passed, and its step signed with the run', async () => {
    await technician.goto('/governor-bench');
    await technician.getByRole('button', { name: 'Begin the run' }).click(slow);
    const dialog = technician.getByRole('dialog');
    await dialog.getByRole('button', { name: /Bench/ }).click();
    await technician.getByRole('option', { name: /GOV-01/ }).click();
    await dialog.getByLabel('Oil in the bench, name and lot').fill('SAE 50, lot BO-117');
    for (const look of [/way the program says/, /guard of the drive/, /Hoses and fittings/, /stop of the drive/])
      await dialog.getByText(look).click();
    await looksRight('begin');
    await dialog.getByRole('button', { name: 'Begin the run' }).click();

    await technician.getByText('which point is next?').waitFor(slow);
    // A pressure in the other unit is doubted while it is typed.
    await technician.getByLabel('relief pressure', { exact: true }).fill('1965');
    await technician.getByText(/look at the unit of the gauge/).waitFor(slow);
    await looksRight('doubted');
    for (const [point, value] of [
      ['relief pressure', '284'],
      ['pump capacity', '8.6'],
      ['internal leakage', '3.1'],
      ['low speed stop', '1360'],
      ['high speed stop', '2440'],
    ] as const)
      await take(point, value);
    await technician.getByRole('button', { name: 'It does not pass: end as failed' }).waitFor(slow);
    await looksRight('out');
    await technician.getByRole('button', { name: 'Something was adjusted' }).click();
    await dialog.getByRole('button', { name: /What was adjusted/ }).click();
    await technician.getByRole('option', { name: 'high speed stop screw' }).click();
    await dialog.getByLabel('From').fill('as received');
    await dialog.getByLabel('To', { exact: true }).fill('half a turn in');
    await dialog.getByRole('button', { name: 'Record the adjustment' }).click();
    await technician.getByText('To be taken again: high speed stop, low speed stop.').waitFor(slow);
    await take('high speed stop', '2416');
    await take('low speed stop', '1361');
    await technician.getByRole('button', { name: 'Every point is good: end the run' }).click();
    await dialog.getByRole('button', { name: 'End the run as passed' }).click();
    await technician.getByRole('link', { name: 'Sign the step with this run' }).waitFor(slow);
    await technician.getByRole('img', { name: /Points of GT-0001 against limits/ }).waitFor(slow);
    await looksRight('passed');

    await technician.getByRole('link', { name: 'Sign the step with this run' }).click();
    await technician.getByRole('button', { name: /Signed with the run/ }).click(slow);
    await technician.getByRole('option', { name: /GT-0001, passed/ }).click();
    await technician.getByRole('button', { name: /Instrument used/ }).click();
    await technician.getByRole('option', { name: /GOV-01/ }).click();
    await looksRight('sign');
    await technician.getByRole('button', { name: 'Done and good: sign' }).click();
    await technician.getByLabel('Your PIN').fill(demoPin);
    await technician.getByRole('button', { name: /^Sign as/ }).click();
    await technician.getByText('“Test on the bench” is signed.').waitFor(slow);
    const visitor = await as(shop, 'tobit');
    const [run] = (await visitor.call(op.listGovernorRuns, { limit: 5 })).body.rows;
    expect([run?.state, run?.pointsGood]).toEqual(['passed', 5]);
  }, 120_000);

  test('goes by programs that are shown by model and application', async () => {
    await technician.goto('/governor-bench?sheet=programs');
    await technician.getByText('Orrick Twinlark').first().click(slow);
    await technician.getByText('accumulator precharge', { exact: true }).waitFor(slow);
    await looksRight('program');
  }, 60_000);

  test('a program is issued anew with what is done at a point and how it is rounded', async () => {
    const inspector = await pageOf(browser, shop, { signInName: 'sunniva', width: 1180, height: 820 });
    await inspector.goto('/governor-bench?sheet=programs');
    await inspector.getByText('Orrick Twinlark').first().click(slow);
    await inspector.getByRole('button', { name: 'Issue it anew from here' }).click(slow);
    const point = inspector.getByRole('group', { name: 'Point 3' });
    const instruction = point.getByLabel('What to do at this point');
    expect(await instruction.inputValue()).toContain('drain collected for one minute');
    await instruction.fill('Control shaft at mid travel, drain collected for two minutes.');
    await point.getByLabel('Places after the point').fill('0');
    await point.getByRole('button', { name: /Compared/ }).click();
    await inspector.getByRole('option', { name: 'rounded to these places first' }).click();
    await inspector.getByLabel('Where the figures come from').fill('VOM-14, table 501, row B-540 twin');
    await point.scrollIntoViewIfNeeded();
    expect(await accessibilityFaults(inspector)).toEqual([]);
    await picture(inspector, 'governor-issue');
    await inspector.getByRole('button', { name: 'Go on to sign' }).click();
    await inspector.getByLabel('Your PIN').fill(demoPin);
    await inspector.getByRole('button', { name: /^Sign as/ }).click();
    await inspector.getByText(/issue 2 is current/).waitFor(slow);
    const visitor = await as(shop, 'sunniva');
    const { rows } = (await visitor.call(op.listGovernorPrograms, { limit: 50 })).body;
    const issued = rows.find(({ issue }) => issue === 2)?.content.points;
    expect(issued?.[2]).toMatchObject({
      ...{ name: 'internal leakage', decimals: 0, method: 'rounding' },
      instruction: 'Control shaft at mid travel, drain collected for two minutes.',
    });
    expect(issued?.[0]).toMatchObject({ decimals: 0, method: 'absolute', instruction: '' });
  }, 60_000);

  test('in a shop that asks for guard bands says before the run how readings are accepted, and beside each point', async () => {
    await atTheBench(shop, 'VG9102', await governor(shop, 'Heronby Courser 4'));
    const administrator = await as(shop, 'administrator');
    const { version, ...profile } = (await administrator.call(peopleOperations.shop, {})).body;
    const banded = { ...profile, guardBand: 'uncertainty' as const };
    expect((await administrator.call(peopleOperations.changeShop, banded, { version })).status).toBe(200);
    await technician.goto('/governor-bench');
    await technician.getByRole('button', { name: 'Begin the run' }).click(slow);
    const dialog = technician.getByRole('dialog');
    await dialog.getByRole('button', { name: /Bench/ }).click();
    await technician.getByRole('option', { name: /GOV-01/ }).click();
    await dialog.getByText(/GOV-01 is known to ± 1.5 psi, ± 0.1 qt\/min, ± 0.2 qt\/h, ± 2 rpm/).waitFor(slow);
    await dialog.getByLabel('Oil in the bench, name and lot').fill('SAE 50, lot BO-117');
    for (const look of [/way the program says/, /guard of the drive/, /Hoses and fittings/, /stop of the drive/])
      await dialog.getByText(look).click();
    await dialog.getByRole('button', { name: 'Begin the run' }).click();
    await technician.getByText('which point is next?').waitFor(slow);
    await technician.getByText('275 to 295 psi; accepted 276.5 to 293.5 psi').first().waitFor(slow);
    await take('relief pressure', '276');
    await technician.getByText('It does not pass: end as failed').waitFor(slow);
    await looksRight('accepted');
  }, 120_000);
});
