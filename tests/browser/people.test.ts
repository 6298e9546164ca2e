import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { grantAuthorisation } from '../../apps/server/src/modules/people/grant-authorisation.command.ts';
import { demoPin } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { actorOf } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('people on the floor', () => {
  let shop: ShopApp;
  let browser: Browser;
  let job: Job;
  let traineeId: string;

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    job = await Job.arrived(shop, '4611');
    await job.tornDown();
    const admin = await actorOf(shop, 'administrator');
    traineeId = (await actorOf(shop, 'piers')).personId;
    const trainee = { personId: traineeId, process: 'teardown' as const, level: 'trainee' as const, validFrom: day(0) };
    await shop.run(grantAuthorisation, trainee, admin);
    browser = await openBrowser();
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `people-${name}`);
  }
  const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click(slow);
  async function choose(page: Page, label: RegExp, option: RegExp) {
    await page.getByRole('button', { name: label }).click(slow);
    await page.getByRole('option', { name: option }).first().click(slow);
  }

  test('a trainee signs under supervision: the page asks for the supervisor’s own PIN, and shows both', async () => {
    const page = await pageOf(browser, shop, { signInName: 'piers', width: 1024 });
    const step = await job.nextAt('assembly');
    await page.goto(`/travelers/${step.travelerId}?step=${step.id}`);
    for (const { name } of step.form as { name: string }[]) await page.getByLabel(name).fill('none');
    await press(page, /^Done and good: sign/);
    await choose(page, /Supervised by/, /Jory Penhallow/);
    await looksRight(page, 'supervised');
    await page.getByLabel('Your PIN').fill(demoPin);
    await page.getByLabel('The supervisor’s PIN').fill('1357');
    await press(page, /^Sign as Piers/);
    await page.getByText('That is not the supervisor’s own password or PIN').first().waitFor(slow);
    expect(await page.getByLabel('The supervisor’s PIN').inputValue()).toBe('');
    await page.getByLabel('Your PIN').fill(demoPin);
    await page.getByLabel('The supervisor’s PIN').fill(demoPin);
    await press(page, /^Sign as Piers/);
    await page.getByText('is signed.').first().waitFor(slow);
    await page.goto(`/travelers/${step.travelerId}?step=${step.id}`);
    await page
      .getByText(/trainee, supervised by Jory Penhallow/)
      .first()
      .waitFor(slow);
    await looksRight(page, 'supervised-signed');
    await page.context().close();
  }, 90_000);

  test('an absence entered on a person is seen in the week of who is here', async () => {
    const page = await pageOf(browser, shop, { signInName: 'manager' });
    await page.goto(`/administration/people?person=${traineeId}`);
    await page.getByRole('tab', { name: 'Absences' }).click(slow);
    await press(page, 'Enter an absence');
    await choose(page, /Why/, /on holiday/);
    await press(page, /^Enter the absence/);
    await page.getByText('The absence is entered.').first().waitFor(slow);
    await looksRight(page, 'absences');
    await page.getByRole('tab', { name: 'Training' }).click(slow);
    await page.getByText('Shop induction and safety round').first().waitFor(slow);
    await looksRight(page, 'training');
    await page.goto('/manager/who-is-here');
    await page.getByText('Piers Wexcombe').first().waitFor(slow);
    await looksRight(page, 'who-is-here');
    const row = page.getByRole('row', { name: /Piers Wexcombe/ });
    const isWeekend = [0, 6].includes(new Date(`${day(0)}T00:00:00Z`).getUTCDay());
    if (!isWeekend) await row.getByText('on holiday').waitFor(slow);
    await page.goto('/administration/training');
    await page.getByText('Plating chemicals and spill drill').first().waitFor(slow);
    await looksRight(page, 'trainings');
    await page.goto('/administration/working-time');
    await page.getByText('Late shift').first().waitFor(slow);
    await looksRight(page, 'shifts');
    await press(page, 'Describe shifts');
    await page.getByLabel('Called').fill('Half week');
    await page.getByLabel('Begins').fill('08:00');
    await page.getByLabel('Ends').fill('12:00');
    await press(page, /^Describe the shifts/);
    await page.getByText('The shifts are described.').first().waitFor(slow);
    await page.goto('/manager/who-is-here');
    await press(page, 'Week after');
    await page.waitForURL(/week=/);
    await page.context().close();
  }, 90_000);
});
