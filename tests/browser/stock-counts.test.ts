import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { demoPin } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { Stockroom } from '../support/stockroom.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture, scan } from '../support/view-page.ts';

describe('counting and keeping apart', () => {
  let room: Stockroom;
  let browser: Browser;
  let clerk: Page;
  let manager: Page;
  let lot: { id: string; code: string };
  const slow = { timeout: 15_000 };

  beforeAll(async () => {
    room = await Stockroom.open({ dashboardFolder: builtDashboard });
    const customerId = await room.customer('COUNTS', ['maker-new']);
    lot = await room.onShelf('washer', 100);
    await room.onShelf('seal', 6);
    await room.takenOff(await room.kit('C-1', customerId));
    browser = await openBrowser();
    clerk = await pageOf(browser, room.shop, { signInName: 'parts' });
    manager = await pageOf(browser, room.shop, { signInName: 'manager' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await room?.close();
  });

  const dialogOf = (page: Page) => page.getByRole('dialog');
  const signing = () => clerk.getByRole('alertdialog');
  async function choose(page: Page, label: RegExp, option: RegExp) {
    await page.getByRole('button', { name: label }).click(slow);
    await page.getByRole('option', { name: option }).click(slow);
  }
  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `stock-counts-${name}`);
  }
  async function enter(page: Page, counted: string) {
    await page.getByRole('button', { name: `Count ${lot.code} in B-01` }).click(slow);
    await dialogOf(page).getByLabel('Pieces you counted').fill(counted);
    await dialogOf(page).getByLabel('Why it was counted').fill('cycle count');
    await dialogOf(page).getByRole('button', { name: 'Enter the count' }).click(slow);
  }

  test('nothing is due yet, and a scanned bin opens all it holds', async () => {
    await clerk.goto('/counts');
    await clerk.getByText('Nothing is due').waitFor(slow);
    await looksRight(clerk, 'nothing-due');
    await scan(clerk, 'B-01');
    await clerk.getByRole('button', { name: `Count ${lot.code} in B-01` }).waitFor(slow);
    await clerk.getByRole('button', { name: 'Begin counting B-01' }).click(slow);
    await clerk.getByRole('button', { name: 'End counting B-01' }).waitFor(slow);
    await looksRight(clerk, 'bin');
  }, 60_000);

  test('a second person is told who is counting', async () => {
    await manager.goto('/counts?bin=B-01');
    await enter(manager, '100');
    await dialogOf(manager).getByText('Somebody else is counting this bin').waitFor(slow);
    await picture(manager, 'stock-counts-two-at-once');
    await dialogOf(manager).getByRole('button', { name: 'Cancel' }).click(slow);
  }, 60_000);

  test('a large difference waits, unseen, and the manager approves it', async () => {
    await enter(clerk, '60');
    await clerk.getByText('Nothing is changed yet: another person decides about this count.').waitFor(slow);
    await clerk.getByText('waits for another person').waitFor(slow);
    expect(await clerk.getByRole('button', { name: `Decide the count of ${lot.code}` }).count()).toBe(0);
    await manager.getByRole('button', { name: `Decide the count of ${lot.code}` }).click(slow);
    await dialogOf(manager).getByText('Approve: the difference is written').click(slow);
    await looksRight(manager, 'decide');
    await dialogOf(manager).getByRole('button', { name: 'Decide', exact: true }).click(slow);
    await manager.getByText('approved', { exact: true }).waitFor(slow);
    await manager.getByRole('cell', { name: '40 fewer' }).waitFor(slow);
    await manager.getByText('-100.00').waitFor(slow);
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 60 });
    await looksRight(manager, 'counted');
    await clerk.getByRole('button', { name: 'End counting B-01' }).click(slow);
    await clerk.getByRole('button', { name: 'Begin counting B-01' }).waitFor(slow);
  }, 60_000);

  test('the clerk splits a lot, and scraps the worse half before a witness', async () => {
    await clerk.goto(`/lots/${lot.id}`);
    await clerk.getByRole('button', { name: 'Split', exact: true }).click(slow);
    await dialogOf(clerk).getByLabel('How many get a lot of their own').fill('10');
    await dialogOf(clerk).getByLabel('Reason').fill('scratched');
    await looksRight(clerk, 'split');
    await dialogOf(clerk).getByRole('button', { name: 'Split them off' }).click(slow);
    await clerk.getByText(/10 of LOT-\d+ are now LOT-\d+: print its label/).waitFor(slow);
    const half = await room.reads.lot.findFirstOrThrow({
      where: { code: { startsWith: 'LOT' } },
      orderBy: { code: 'desc' },
    });
    await clerk.goto(`/lots/${half.id}`);
    await clerk.getByRole('button', { name: 'Scrap', exact: true }).click(slow);
    await dialogOf(clerk).getByLabel('How many').fill('10');
    await dialogOf(clerk).getByLabel('Reason').fill('scratched');
    await looksRight(clerk, 'scrap');
    await dialogOf(clerk).getByRole('button', { name: 'Go on to sign' }).click(slow);
    await choose(clerk, /Seen by/, /Hester Quayle/);
    await signing().getByLabel('The witness’s PIN').fill('0000');
    await signing().getByLabel('Your PIN').fill(demoPin);
    await looksRight(clerk, 'witness');
    await signing()
      .getByRole('button', { name: /^Sign as/ })
      .click(slow);
    await signing().getByText('That is not the witness’s own password or PIN').first().waitFor(slow);
    await signing().getByLabel('The witness’s PIN').fill(demoPin);
    await signing().getByLabel('Your PIN').fill(demoPin);
    await signing()
      .getByRole('button', { name: /^Sign as/ })
      .click(slow);
    await clerk.getByText(`10 of ${half.code} are scrapped.`).waitFor(slow);
    expect(await room.places(half.id)).toEqual({ scrap: 10 });
  }, 90_000);

  test('a lot is reported as suspected, and nobody but the inspector can go on with it', async () => {
    await clerk.goto(`/lots/${lot.id}`);
    await clerk.getByRole('button', { name: 'Suspect', exact: true }).click(slow);
    await dialogOf(clerk).getByLabel('What makes you doubt it').fill('the mark is ground off');
    await dialogOf(clerk).getByRole('button', { name: 'Hold it apart' }).click(slow);
    await clerk.getByText(/It is held as suspected unapproved parts: the mark is ground off/).waitFor(slow);
    expect(await clerk.getByRole('button', { name: 'Scrap', exact: true }).count()).toBe(0);
    await looksRight(clerk, 'suspected');
  }, 60_000);

  test('the seal is superseded: what is left of it is used first', async () => {
    await clerk.goto(`/parts/${room.part('seal')}`);
    await clerk.getByRole('button', { name: 'What may stand in' }).click(slow);
    await choose(clerk, /Since when/, /when the old part is used up/);
    await dialogOf(clerk).getByText('TS-21 supersedes TS-20').click(slow);
    await looksRight(clerk, 'stand-in');
    await dialogOf(clerk).getByRole('button', { name: 'Keep this order' }).click(slow);
    await clerk.getByText(/\(supersedes it, when the old part is used up\)/).waitFor(slow);
  }, 60_000);
});
