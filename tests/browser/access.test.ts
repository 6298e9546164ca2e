import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import { generate } from 'otplib';
import pg from 'pg';
import type { Browser, Page } from 'playwright-core';
import { demoPassword, demoPin } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture, scan } from '../support/view-page.ts';

const slow = { timeout: 30_000 };

describe('who is at the screen', () => {
  let shop: ShopApp;
  let browser: Browser;
  let sql: pg.Client;
  let administrator: Page;
  let tablet: Page;
  let badge: string;

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
    // As in a shop that works for real.
    await sql.query(`UPDATE shop_profile SET second_factor_roles = '{administrator}'`);
    browser = await openBrowser();
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await sql?.end();
    await shop?.close();
  });

  async function looksRight(page: Page, name: string) {
    for (const size of [
      { width: 1366, height: 768 },
      { width: 1180, height: 820 },
    ]) {
      await page.setViewportSize(size);
      expect(await accessibilityFaults(page)).toEqual([]);
      await picture(page, `access-${name}-${size.width}`);
    }
  }
  const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click(slow);
  const choose = async (page: Page, menu: string | RegExp, item: string) => {
    await press(page, menu);
    await page.getByRole('menuitem', { name: item }).click(slow);
  };

  test('an administrator is led to one-time codes before anything else, and signs in with them from then on', async () => {
    administrator = await pageOf(browser, shop, { signInName: 'admin' });
    await administrator.getByRole('heading', { name: 'Set up one-time codes' }).waitFor(slow);
    await administrator.goto('/administration/people');
    await administrator.getByLabel('Password', { exact: false }).first().fill(demoPassword);
    await press(administrator, 'Set up one-time codes');
    const secret =
      (await administrator.getByText('Secret:').locator('.code').textContent(slow))?.replaceAll(' ', '') ?? '';
    await looksRight(administrator, 'second-factor');
    await administrator.getByLabel('One-time code').fill('000000');
    await press(administrator, 'Use codes from now on');
    await administrator.getByText('That one-time code does not fit').waitFor(slow);
    const code = await generate({ secret });
    await administrator.getByLabel('One-time code').fill(`${code.slice(0, 3)} ${code.slice(3)}`);
    await press(administrator, 'Use codes from now on');
    const codes = await administrator.getByRole('listitem').allTextContents();
    await administrator.getByText('They are shown only now').waitFor(slow);
    await looksRight(administrator, 'recovery-codes');
    const kept = codes.length > 0 ? codes : await administrator.getByRole('listitem').allTextContents();
    expect(kept).toHaveLength(10);
    await press(administrator, 'I have kept them');
    await administrator.getByRole('heading', { level: 1, name: 'Who works here' }).waitFor(slow);
    await choose(administrator, /Ottoline/, 'Sign out');
    await administrator.getByLabel('Sign-in name').fill('admin');
    await administrator.getByLabel('Password', { exact: true }).fill(demoPassword);
    await administrator.keyboard.press('Enter');
    await administrator.getByLabel('One-time code').waitFor(slow);
    await looksRight(administrator, 'code');
    await administrator.getByLabel('One-time code').fill(kept[0] ?? '');
    await administrator.keyboard.press('Enter');
    await administrator.getByRole('link', { name: 'People', exact: true }).waitFor(slow);
  }, 180_000);

  test('issues a badge; at the tablet its scan and the PIN take over, where its person signed in that day', async () => {
    await administrator.goto('/administration/people');
    await administrator.getByRole('link', { name: 'Jory Penhallow' }).click(slow);
    await choose(administrator, 'Account…', 'Badge…');
    await press(administrator, 'Issue a badge');
    badge = (await administrator.locator('figcaption .code').textContent(slow)) ?? '';
    await looksRight(administrator, 'badge');
    await administrator.keyboard.press('Escape');
    tablet = await pageOf(browser, shop, { signInName: 'parts', width: 1180, height: 820 });
    await tablet.getByRole('heading', { name: 'What can I pull now' }).waitFor(slow);
    await tablet.locator('main').focus();
    await scan(tablet, badge);
    await tablet.getByLabel('PIN of this badge’s person').fill(demoPin);
    await press(tablet, 'Take over this device');
    await tablet.getByText('A badge is not enough here yet').waitFor(slow);
    await press(tablet, 'Cancel');
    await choose(tablet, /Ines/, 'Sign out');
    for (const name of ['tech', 'parts']) {
      await tablet.getByLabel('Sign-in name').fill(name);
      await tablet.getByLabel('Password', { exact: true }).fill(demoPassword);
      await tablet.keyboard.press('Enter');
      await tablet.locator('.initials').waitFor(slow);
      await tablet.locator('main h1').waitFor(slow);
      if (name === 'tech') await choose(tablet, /Jory/, 'Sign out');
    }
    await tablet.locator('main').focus();
    await scan(tablet, badge);
    await looksRight(tablet, 'badge-scanned');
    await tablet.getByLabel('PIN of this badge’s person').fill(demoPin);
    await press(tablet, 'Take over this device');
    await tablet.getByText('Jory Penhallow').first().waitFor(slow);
    await tablet.waitForURL(/\/bench/, slow);
  }, 240_000);

  test('a tablet nobody touches locks itself, says who and where, and goes on with the PIN', async () => {
    await tablet.clock.install();
    await tablet.reload();
    await tablet.locator('.initials').waitFor(slow);
    await tablet.clock.fastForward('10:30');
    await tablet.getByRole('heading', { name: 'Locked: Jory Penhallow' }).waitFor(slow);
    await looksRight(tablet, 'locked');
    await tablet.reload();
    await tablet.getByRole('heading', { name: 'Locked: Jory Penhallow' }).waitFor(slow);
    await tablet.getByLabel('Your PIN').fill('1357');
    await tablet.keyboard.press('Enter');
    await tablet.getByText('That pin is not yours').waitFor(slow);
    await tablet.getByLabel('Your PIN').fill(demoPin);
    await tablet.keyboard.press('Enter');
    await tablet.getByRole('heading', { name: /^Locked/ }).waitFor({ ...slow, state: 'detached' });
  }, 180_000);

  test('shows one’s own sessions and ends one; the PIN is changed with the password', async () => {
    await tablet.goto('/account');
    await tablet.getByText('by badge and PIN').waitFor(slow);
    await looksRight(tablet, 'account');
    await press(tablet, 'Change the PIN');
    const dialog = tablet.getByRole('dialog');
    await dialog.getByLabel('Your password', { exact: true }).fill(demoPassword);
    await dialog.getByLabel('New PIN').fill('1234');
    await dialog.getByRole('button', { name: 'Change the PIN' }).click(slow);
    await dialog
      .getByText(/Not one digit repeated/)
      .first()
      .waitFor(slow);
    await dialog.getByLabel('New PIN').fill('8642');
    await dialog.getByRole('button', { name: 'Change the PIN' }).click(slow);
    await tablet.getByText('The PIN is changed').waitFor(slow);
  }, 120_000);

  test('someone new chooses their own password before anything else', async () => {
    await administrator.goto('/administration/people');
    await press(administrator, 'Add a person');
    const dialog = administrator.getByRole('dialog');
    await dialog.getByLabel('Name', { exact: true }).fill('Bench 2');
    await dialog.getByLabel('Initials').fill('PG');
    await dialog.getByLabel('Sign-in name').fill('perpetua');
    await dialog.getByLabel('First password').fill('handed over on a Tuesday');
    await dialog.getByText('Technician', { exact: true }).click();
    await dialog.getByRole('button', { name: 'Add the person' }).click(slow);
    await dialog.getByText('An account belongs to one person').waitFor(slow);
    await dialog.getByLabel('Name', { exact: true }).fill('Perpetua Gandy');
    await dialog.getByRole('button', { name: 'Add the person' }).click(slow);
    await administrator.getByText('Perpetua Gandy is added.').waitFor(slow);
    const context = await browser.newContext({ baseURL: shop.address });
    const page = await context.newPage();
    await page.goto('/sign-in');
    await page.getByLabel('Sign-in name').fill('perpetua');
    await page.getByLabel('Password', { exact: true }).fill('handed over on a Tuesday');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Choose your own password' }).waitFor(slow);
    await looksRight(page, 'own-password');
    await page.getByLabel('The password you were given').fill('handed over on a Tuesday');
    await page.getByLabel('Your new password').fill('four swans on the mill pond');
    await page.getByLabel(/A PIN for signing/).fill('9753');
    await press(page, 'Change the password');
    await page.waitForURL(/\/bench/, slow);
    await context.close();
  }, 180_000);

  // FAA AC 120-78B: a prompt before signing, a notice after it.
  test('a signature is a deliberate act: what is stated and about what stands before it, a notice after it', async () => {
    const inspector = await pageOf(browser, shop, { signInName: 'inspector' });
    await inspector.locator('main h1').waitFor(slow);
    await inspector.goto('/manuals');
    await inspector.getByRole('link', { name: 'QOM-301' }).click(slow);
    await inspector
      .getByRole('link', { name: /^Revision/ })
      .first()
      .click(slow);
    await press(inspector, 'Check its currency');
    await press(inspector, 'Go on to sign');
    const dialog = inspector.getByRole('alertdialog');
    await dialog.getByText('I checked with the maker that this is the current revision').waitFor(slow);
    expect(await dialog.locator('.signed-content').textContent()).toContain('QOM-301');
    await dialog.getByRole('button', { name: 'Sign as Bram Ostler' }).waitFor(slow);
    await looksRight(inspector, 'signing');
    await dialog.getByLabel('Your PIN').fill(demoPin);
    await inspector.keyboard.press('Enter');
    const notice = inspector.getByRole('alertdialog', { name: /signed/i });
    await notice.waitFor(slow);
    await inspector.context().close();
  }, 120_000);

  test('who leaves leaves a list to take over; their signatures stay to be read', async () => {
    await administrator.goto('/administration/people');
    await administrator.getByRole('link', { name: 'Bram Ostler' }).click(slow);
    await choose(administrator, 'Account…', 'Leaves the shop…');
    await administrator.getByText(/Left for others to take over|Nothing of theirs is left open/).waitFor(slow);
    await looksRight(administrator, 'leaves');
    await administrator.getByLabel('Reason').fill('retired');
    await press(administrator, 'End the account of Bram Ostler');
    await administrator.getByText('has left', { exact: true }).first().waitFor(slow);
    await press(administrator, 'Signatures');
    await administrator
      .getByText(/checked with the maker/)
      .first()
      .waitFor(slow);
    await looksRight(administrator, 'signatures');
  }, 120_000);
});
