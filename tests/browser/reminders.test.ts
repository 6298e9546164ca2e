import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { addMonths } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';
import { day } from '../support/days.ts';
import { MailCatcher } from '../support/mail-catcher.ts';
import { outThere } from '../support/out-there.ts';
import { as } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const due = (days: number) => addMonths(day(days), -72);

describe('who comes due and who is written to, as front desk and manager', () => {
  let catcher: MailCatcher;
  let shop: ShopApp;
  let browser: Browser;
  let desk: Page;
  const slow = { timeout: 20_000 };

  beforeAll(async () => {
    catcher = await MailCatcher.open();
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard, smtpUrl: catcher.url });
    await outThere(shop, [
      { serial: 'BR-OVER', overhauledOn: due(-12) },
      { serial: 'BR-25', overhauledOn: due(25) },
      { serial: 'BR-160', overhauledOn: due(160), customer: 'FERNSIDE' },
      { serial: 'BR-300', overhauledOn: due(300), customer: 'OXLIP' },
      { serial: 'BR-FLOWN', overhauledOn: addMonths(day(0), -36), flown: 1_930 },
    ]);
    const manager = await as(shop, 'manager');
    const settings = {
      ...{ isOn: true, intervals: [180, 90, 30], senderName: 'The desk', senderEmail: 'due@tansyhollow.example.com' },
      ...{
        replyTo: '',
        subject: 'Units that are likely to fall due',
        opening: 'We write about your units.',
        closing: '',
      },
    };
    await manager.call(reminderOperations.changeReminderSettings, { ...settings, reason: 'begun' }, { version: 0 });
    browser = await openBrowser();
    desk = await pageOf(browser, shop, { signInName: 'desk' });
  }, 240_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
    await catcher?.down();
  });

  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, name);
  }

  test('sees the fleet with the fan of its dates, overdue first, and what is expected by month', async () => {
    await desk.goto('/coming-due?days=365');
    const list = desk.getByRole('region', { name: 'Units' });
    await list.getByRole('row', { name: /BR-OVER/ }).waitFor(slow);
    const serials = await list.locator('tbody tr td:first-child, tbody tr th:first-child').allTextContents();
    expect(serials.map((text) => text.trim().split(' ').at(-1))).toEqual([
      ...['BR-OVER', 'BR-25', 'BR-FLOWN', 'BR-160', 'BR-300'],
    ]);
    await list.getByRole('img', { name: /between .* and/ }).waitFor(slow);
    await list
      .getByRole('row', { name: /BR-OVER/ })
      .getByText('12 days over')
      .waitFor(slow);
    await desk.getByRole('img', { name: 'Expected arrivals by month' }).waitFor(slow);
    await looksRight(desk, 'coming-due-fleet');
    await desk.goto('/coming-due?days=365&group=customer');
    await desk.getByRole('heading', { name: 'Fernside Agricultural Spraying' }).waitFor(slow);
    await desk.setViewportSize({ width: 1180, height: 820 });
    await looksRight(desk, 'coming-due-by-customer');
    await desk.getByRole('img', { name: 'Expected arrivals by month' }).scrollIntoViewIfNeeded();
    await picture(desk, 'coming-due-arrivals');
    const overflow = await desk.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth');
    expect(overflow).toBe(0);
    await desk.setViewportSize({ width: 1366, height: 768 });
  });

  test('keeps filters in the address, also over a reload', async () => {
    await desk.goto('/coming-due');
    await desk.getByRole('textbox', { name: 'Find' }).fill('BR-25');
    await desk.waitForURL(/search=BR-25/, slow);
    await desk.getByRole('row', { name: /BR-OVER/ }).waitFor({ state: 'detached', ...slow });
    await desk.reload();
    await desk.getByRole('row', { name: /BR-25/ }).waitFor(slow);
    expect(await desk.getByRole('row', { name: /BR-OVER/ }).count()).toBe(0);
  });

  test('reads the letter, writes it, and sees it sent', async () => {
    await desk.goto('/reminders');
    const row = desk.getByRole('row', { name: /Brackenmoor/ });
    await row.waitFor(slow);
    await looksRight(desk, 'reminders-due');
    await row.getByRole('button', { name: 'Read it' }).click();
    const dialog = desk.getByRole('dialog');
    await dialog.getByText(/operator’s authority decide/).waitFor(slow);
    await looksRight(desk, 'reminders-letter');
    await dialog.getByRole('button', { name: 'Write this letter' }).click();
    await desk.getByRole('button', { name: 'Write them now' }).click();
    await desk.getByRole('row', { name: /RL-00001.*sent/ }).waitFor(slow);
    expect(catcher.caught.map(({ subject }) => subject)).toEqual(['Units that are likely to fall due']);
    await desk.getByRole('row', { name: /RL-00001/ }).click();
    await desk.getByRole('dialog').getByText('the server').first().waitFor(slow);
    await looksRight(desk, 'reminders-record');
    await desk.keyboard.press('Escape');
  });

  test('prints one, says when it was posted, and writes down who wants none', async () => {
    await desk.goto('/reminders');
    await desk.getByRole('button', { name: 'Write 1 letter' }).click();
    await desk.getByRole('button', { name: /Fernside/ }).click();
    await desk.getByRole('option', { name: /paper/ }).click();
    await desk.getByRole('button', { name: 'Write them now' }).click();
    await desk.getByRole('row', { name: /RL-00002.*to print and post/ }).click();
    await desk.getByRole('button', { name: 'It was printed and posted' }).click();
    await desk
      .getByRole('dialog')
      .getByText(/Posted on/)
      .first()
      .waitFor(slow);
    await desk.keyboard.press('Escape');
    await desk.getByRole('link', { name: 'Customers' }).first().click();
    await desk
      .getByRole('link', { name: /Fernside/ })
      .first()
      .click();
    await desk.getByRole('button', { name: 'They want no letters' }).click();
    await desk.getByLabel('Who said it, and how').fill('Dorrie Pask by phone');
    await desk.getByRole('button', { name: 'Send no more letters' }).click();
    await desk.getByText('wants no letters').waitFor(slow);
    await desk.setViewportSize({ width: 1180, height: 820 });
    await looksRight(desk, 'customer-letters');
  });

  test('as manager, sees what is likely to come in and assumes a share with a reason', async () => {
    const manager = await pageOf(browser, shop, { signInName: 'manager', width: 1180, height: 820 });
    await manager.goto('/manager');
    const panel = manager.getByRole('region', { name: 'What is likely to come in' });
    await panel.getByText('Assumption: none.').waitFor(slow);
    await panel.getByRole('button', { name: 'Change the assumption' }).click();
    await manager.getByLabel('Of a hundred units').fill('60');
    await manager.getByLabel('Reason').fill('three years of our own');
    await looksRight(manager, 'assume-arrivals');
    await manager.getByRole('button', { name: 'Assume this' }).click();
    await panel.getByText('Assumption: 60 in a hundred').waitFor(slow);
    await panel.getByText('The same as a table').click();
    expect(await accessibilityFaults(manager)).toEqual([]);
    await panel.scrollIntoViewIfNeeded();
    await picture(manager, 'manager-arrivals');
  });
});
