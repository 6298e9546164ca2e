import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { sendToVendor } from '../../apps/server/src/modules/vendors/send-to-vendor.command.ts';
import { demoPin } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { signWithWitness } from '../support/sign-with-witness.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

/** A unit whose bushing and spring are at a vendor, and whose owner brought washers that lie in its tray. */
describe('pieces that do not come back, come back late, or are held apart', () => {
  let room: Stockroom;
  let browser: Browser;
  let clerk: Page;
  let inspector: Page;
  let kit: KitOf;
  let washers: { id: string; code: string };
  const slow = { timeout: 15_000 };

  beforeAll(async () => {
    room = await Stockroom.open({ dashboardFolder: builtDashboard });
    const customerId = await room.customer('VTRAY', ['maker-new', 'customer-supplied']);
    await room.revised([
      { part: 'washer', position: 'cover', quantity: 2, source: 'new' },
      { part: 'spring', position: 'speeder', quantity: 1, source: 'reused' },
      { part: 'bushing', position: 'pilot', quantity: 1, source: 'any' },
    ]);
    kit = await room.kit('VT-1', customerId, 'build');
    await room.sql("UPDATE work_orders SET consent = 'approved' WHERE id = $1", [kit.workOrderId]);
    const { speeder, pilot } = await room.takenOff(kit);
    const vendor = await room.reads.supplier.findFirstOrThrow({ where: { approvedUntil: { gte: new Date() } } });
    const pieces = [speeder, pilot].map((tag) => ({ lotId: tag?.lotId ?? '', quantity: 1 }));
    const order = { supplierId: vendor.id, purchaseOrder: 'PO-7', paperDue: 'certificate', expectedOn: room.day(9) };
    await room.shop.run(sendToVendor, { ...order, stepIds: [], pieces }, room.clerk);
    washers = await room.onShelf('washer', 2, { customerId, sourceClass: 'customer-supplied' });
    await room.issue(kit, washers.code);
    browser = await openBrowser();
    clerk = await pageOf(browser, room.shop, { signInName: 'parts' });
    inspector = await pageOf(browser, room.shop, { signInName: 'inspector' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await room?.close();
  });

  const dialogOf = (page: Page) => page.getByRole('dialog');
  async function choose(page: Page, label: RegExp, option: RegExp) {
    await dialogOf(page).getByRole('button', { name: label }).click(slow);
    await page.getByRole('option', { name: option }).click(slow);
  }
  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `vendor-and-tray-${name}`);
  }

  test('the clerk writes a piece off before a witness, and the order names its owner', async () => {
    await clerk.goto('/outside-work?sheet=out');
    await clerk.getByRole('button', { name: 'Pieces do not come back' }).click(slow);
    await dialogOf(clerk)
      .getByLabel(/How many lost: TP-30/)
      .fill('1');
    await choose(clerk, /What became of it/, /destroyed at the vendor/);
    await dialogOf(clerk).getByLabel('The vendor’s paper').fill('letter 12');
    await dialogOf(clerk).getByLabel('What happened').fill('burnt in the oven');
    await looksRight(clerk, 'write-off');
    await dialogOf(clerk).getByRole('button', { name: 'Go on to sign' }).click(slow);
    await signWithWitness(clerk, 'Jory Penhallow');
    await clerk.getByText(/They are written off. Tell Customer VTRAY/).waitFor(slow);
    await clerk.goto('/outside-work?sheet=lost');
    await clerk.getByText('burnt in the oven').waitFor(slow);
    await looksRight(clerk, 'lost');
    await clerk.goto(`/work-orders/${kit.workOrderId}?tab=parts`);
    await clerk.getByRole('heading', { name: 'Lost at vendors' }).waitFor(slow);
    await looksRight(clerk, 'order');
  }, 90_000);

  test('the inspector takes the other piece back by itself', async () => {
    await inspector.goto('/outside-work?sheet=out');
    await inspector.getByRole('button', { name: 'Take back pieces alone' }).click(slow);
    await dialogOf(inspector)
      .getByLabel(/How many came back: TB-40/)
      .fill('1');
    await choose(inspector, /How they came back/, /^good/);
    await dialogOf(inspector).getByLabel('Vendor’s certificate or release number').fill('SP-3');
    await dialogOf(inspector).getByText('Came back with them: certificate').click(slow);
    await looksRight(inspector, 'take-back');
    await dialogOf(inspector).getByRole('button', { name: 'Go on to sign' }).click(slow);
    await inspector.getByRole('alertdialog').getByLabel('Your PIN').fill(demoPin);
    await inspector
      .getByRole('alertdialog')
      .getByRole('button', { name: /^Sign as/ })
      .click(slow);
    await inspector.getByText(/The pieces are back, in the rack/).waitFor(slow);
  }, 90_000);

  test('the inspector rejects an owner’s piece in the tray, the clerk holds the rest apart', async () => {
    await inspector.goto(`/kits/${kit.kitId}`);
    await inspector.getByRole('button', { name: `Reject pieces of ${washers.code} for their owner` }).click(slow);
    await dialogOf(inspector).getByLabel('How many').fill('1');
    await dialogOf(inspector).getByLabel('What is wrong with them').fill('cracked');
    await looksRight(inspector, 'reject');
    await dialogOf(inspector).getByRole('button', { name: 'Go on to sign' }).click(slow);
    await inspector.getByRole('alertdialog').getByLabel('Your PIN').fill(demoPin);
    await inspector
      .getByRole('alertdialog')
      .getByRole('button', { name: /^Sign as/ })
      .click(slow);
    await inspector.getByText(/1 are held for their owner as LOT-/).waitFor(slow);
    await clerk.goto(`/kits/${kit.kitId}`);
    await looksRight(clerk, 'tray');
    await clerk.getByRole('button', { name: `In doubt: hold ${washers.code} apart` }).click(slow);
    await choose(clerk, /Why/, /suspected unapproved/);
    await dialogOf(clerk).getByLabel('What was seen').fill('markings ground off');
    await looksRight(clerk, 'hold');
    await dialogOf(clerk).getByRole('button', { name: 'Hold it apart' }).click(slow);
    await clerk.getByText('The tray is empty').waitFor(slow);
    expect(await room.places(washers.id)).toEqual({ quarantine: 1 });
  }, 90_000);

  test('adding a part number with a stand-in leads on to what may stand in for it', async () => {
    await clerk.goto('/parts');
    await clerk.getByRole('button', { name: 'Add a part number' }).click(slow);
    await dialogOf(clerk).getByLabel('Part number', { exact: true }).fill('TW-11');
    await dialogOf(clerk).getByLabel('Maker').fill('Quillon');
    await dialogOf(clerk).getByLabel('Description').fill('test washer, thick');
    await choose(clerk, /Class/, /Hardware/);
    await dialogOf(clerk).getByLabel('Lead time').fill('5');
    await dialogOf(clerk).getByLabel('Price of one').fill('1.25');
    await dialogOf(clerk).getByLabel('May stand in for it').fill('TW-10');
    await clerk.getByRole('option', { name: /TW-10/ }).click(slow);
    await dialogOf(clerk).getByRole('button', { name: 'Add the part number' }).click(slow);
    await clerk.getByRole('dialog', { name: 'What may stand in for TW-11?' }).waitFor(slow);
    expect(new URL(clerk.url()).searchParams.get('asked')).toBe('stand-ins');
    await dialogOf(clerk).getByText('TW-10').first().waitFor(slow);
    await looksRight(clerk, 'stand-ins');
  }, 90_000);
});
