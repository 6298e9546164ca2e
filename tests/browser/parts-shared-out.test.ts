import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { setNeedBy } from '../../apps/server/src/modules/kits/set-need-by.command.ts';
import { openBrowser } from '../support/browser.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

describe('the parts clerk shares out the shelf', () => {
  let room: Stockroom;
  let browser: Browser;
  let clerk: Page;
  let seal: { id: string; code: string };
  let [soon]: KitOf[] = [];
  const slow = { timeout: 15_000 };

  beforeAll(async () => {
    room = await Stockroom.open({ dashboardFolder: builtDashboard });
    const customer = await room.customer('SHARE', ['maker-new']);
    [soon] = [await room.kit('P-1', customer), await room.kit('P-2', customer)];
    const { version } = await room.reads.kit.findUniqueOrThrow({ where: { id: soon?.kitId ?? '' } });
    await room.shop.run(setNeedBy, { kitId: soon?.kitId ?? '', needBy: room.day(5) }, room.clerk, { version });
    await room.onShelf('washer', 10);
    await room.onShelf('wire', 200);
    seal = await room.onShelf('seal', 1);
    browser = await openBrowser();
    clerk = await pageOf(browser, room.shop, { signInName: 'caspar' });
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await room?.close();
  });

  async function looksRight(name: string) {
    expect(await accessibilityFaults(clerk)).toEqual([]);
    await picture(clerk, `parts-shared-out-${name}`);
  }

  test('sees which kit to fill first, why, with the proof, and what the other lacks', async () => {
    await clerk.getByRole('link', { name: 'Kits I can fill now, best first' }).click(slow);
    await clerk.getByText('Best possible: no other choice of kits avoids more. This is proven.').waitFor(slow);
    await clerk.getByText(/without the pieces on the shelf new ones would be here/).waitFor(slow);
    await clerk
      .getByText(/The shelf would do for it alone, but what it needs \(1 × TS-20\) avoids more delay in KIT-0001/)
      .waitFor(slow);
    await clerk.getByText('3 lots to promise').click();
    await looksRight('to-fill');
  }, 60_000);

  test('changes whom stock serves first, with a reason', async () => {
    await clerk.getByRole('button', { name: 'Change the rule' }).click();
    await clerk.getByRole('dialog').waitFor(slow);
    await clerk.getByRole('button', { name: /Served first/ }).click();
    await clerk.getByRole('option', { name: /the higher priority, then/ }).click();
    await clerk.getByLabel('Reason').fill('grounded aircraft come first');
    await looksRight('policy');
    await clerk.getByRole('dialog').getByRole('button', { name: 'Change the rule' }).click();
    await clerk.getByText(/: grounded aircraft come first/).waitFor(slow);
    await clerk.getByRole('strong').filter({ hasText: 'the higher priority, then' }).waitFor(slow);
  }, 60_000);

  test('accepts: the pieces are promised', async () => {
    await clerk.getByRole('button', { name: 'Promise the shelf to 1 kit' }).click();
    await clerk.getByText('3 lines of 1 kit promised: pull them by scan.').waitFor(slow);
    await clerk.getByText('1 more kit has everything promised to it').waitFor(slow);
    expect(await room.reads.reservation.count()).toBe(3);
  }, 60_000);

  test('asks what would be if the seal went to the other unit, and reads who becomes short', async () => {
    await clerk.goto(`/lots/${seal.id}`);
    await clerk.getByRole('heading', { name: 'Which kits it serves' }).waitFor(slow);
    await clerk.getByLabel('Kit', { exact: true }).fill('KIT-0002');
    await clerk.getByRole('option', { name: /KIT-0002/ }).click(slow);
    await clerk.getByText(/helps KIT-0002 and makes KIT-0001 short or late/).waitFor(slow);
    await clerk.getByText('It takes 1 promised to KIT-0001.').waitFor(slow);
    await looksRight('what-if');
    expect(await room.reads.reservation.count()).toBe(3);
  }, 60_000);

  test('freezes the promise, so that the same question is refused', async () => {
    await clerk.goto(`/kits/${soon?.kitId}?sheet=lines&line=${soon?.line.drive}`);
    await clerk.getByRole('button', { name: `Freeze ${seal.code}` }).click(slow);
    await clerk.getByLabel('Reason').fill('matched to this hub');
    await clerk.getByRole('dialog').getByRole('button', { name: 'Freeze' }).click();
    await clerk.getByText(/frozen by .*: matched to this hub/).waitFor(slow);
    await looksRight('frozen');
    await clerk.goto(`/lots/${seal.id}`);
    await clerk.getByLabel('Kit', { exact: true }).fill('KIT-0002');
    await clerk.getByRole('option', { name: /KIT-0002/ }).click(slow);
    await clerk.getByText(/set aside for KIT-0001/).waitFor(slow);
  }, 60_000);
});
