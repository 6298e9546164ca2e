import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { setNeedBy } from '../../apps/server/src/modules/kits/set-need-by.command.ts';
import { raiseOrder } from '../../apps/server/src/modules/purchasing/raise-order.command.ts';
import { receiveUnit } from '../../apps/server/src/modules/work-orders/receive-unit.command.ts';
import { demoPin } from '../../seed/data/people.ts';
import { readsOf, threeBlade } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { day } from '../support/days.ts';
import { actorOf } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { signWithWitness } from '../support/sign-with-witness.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture, scan } from '../support/view-page.ts';

/** A reseal kit needed in five days, and an order of its piston O-rings that lands today. */
async function aKitAndADelivery(shop: ShopApp): Promise<string> {
  const parts = await actorOf(shop, 'parts');
  const arrival = await threeBlade(shop, '4411', { scope: 'reseal' });
  const { kitId } = await shop.run(receiveUnit, arrival, await actorOf(shop, 'desk'));
  if (!kitId) throw new Error('The reseal has no kit');
  const kit = await readsOf(shop).kit.findUniqueOrThrow({ where: { id: kitId } });
  await shop.run(setNeedBy, { kitId, needBy: day(5) }, parts, { version: kit.version });
  const part = await readsOf(shop).part.findUniqueOrThrow({ where: { number: 'Q301-12' } });
  const lines = [{ partId: part.id, quantity: 10, dueOn: day(0) }];
  await shop.run(raiseOrder, { supplierId: part.supplierId ?? '', note: '', lines }, parts);
  return kitId;
}

describe('a day in the parts room', () => {
  let shop: ShopApp;
  let browser: Browser;
  let clerk: Page;
  let inspector: Page;
  let kitId: string;
  const slow = { timeout: 15_000 };

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    kitId = await aKitAndADelivery(shop);
    browser = await openBrowser();
    clerk = await pageOf(browser, shop, { signInName: 'caspar' });
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  /** No accessibility fault, and a picture kept. */
  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `parts-room-${name}`);
  }

  test('the clerk lands on the kit board and sees what stops the builder', async () => {
    await clerk
      .getByRole('heading', { name: 'What can I pull now, and what stops a builder this week?' })
      .waitFor(slow);
    const row = clerk.getByRole('button', { name: /KIT-0001/ });
    await row.waitFor(slow);
    expect(await row.getAttribute('aria-expanded')).toBe('true');
    await clerk
      .getByText(/short for KIT-0001 .*none on the shelf, none on order/)
      .first()
      .waitFor(slow);
    await looksRight(clerk, 'board');
  }, 60_000);

  test('receives the delivery against its order line and is shown the label', async () => {
    await clerk.goto('/receiving');
    await clerk.getByRole('link', { name: /Q301-12/ }).click();
    await clerk.getByLabel('How many you counted').fill('10');
    await clerk.getByLabel('Supplier’s lot').fill('HL-7731');
    await clerk.getByLabel('Certificate').fill('HLC-20911');
    await clerk.getByLabel('Cure date').fill(day(-60));
    await clerk.getByText('maker’s new').click();
    await looksRight(clerk, 'receiving');
    await clerk.getByRole('button', { name: 'Receive into quarantine' }).click();
    const label = clerk.getByRole('region', { name: 'Label of LOT-00001' });
    await label.waitFor(slow);
    expect(await label.textContent()).toMatch(
      /Q301-12[\s\S]*10 piece · supplier’s lot HL-7731 · certificate HLC-20911/,
    );
  }, 60_000);

  /** Accept, sign with the PIN; the same for whoever tries. */
  async function accept(page: Page) {
    await page.getByRole('button', { name: 'Accept or reject' }).click();
    await page.getByText('Accept: it may be used').click();
    await page.getByRole('button', { name: 'Go on to sign' }).click();
    await page.getByLabel('Your PIN').fill(demoPin);
    await page.getByRole('button', { name: /^Sign as/ }).click();
  }

  test('may not accept it without the authorisation; the inspector may, and the clerk sees it at once', async () => {
    await clerk.getByRole('link', { name: 'Open LOT-00001' }).click();
    await accept(clerk);
    await clerk.getByText('You do not hold the authorisation this needs').waitFor(slow);
    await clerk.getByRole('button', { name: 'Cancel' }).click();
    await inspector.goto(new URL(clerk.url()).pathname);
    await accept(inspector);
    await clerk.getByRole('button', { name: 'Put away' }).waitFor(slow);
    await looksRight(inspector, 'lot');
  }, 60_000);

  test('puts it away in its home bin', async () => {
    await clerk.getByRole('button', { name: 'Put away' }).click();
    await clerk.getByText('Q301-12 lives in A-01').waitFor(slow);
    await clerk.getByRole('dialog').getByRole('button', { name: 'Put away' }).click();
    await clerk.getByText('bin A-01', { exact: true }).first().waitFor(slow);
  }, 60_000);

  test('promises it to the kit and pulls it by scanner, seen in a second browser', async () => {
    await inspector.goto(`/kits/${kitId}`);
    await inspector.getByText('The tray is empty').waitFor(slow);
    await clerk.goto(`/kits/${kitId}`);
    await clerk.getByRole('button', { name: 'Promise what the shelf can give' }).click();
    await clerk.getByText('Promised to KIT-0001 what the shelf has for it.').waitFor(slow);
    await clerk.getByRole('row', { name: /A-01.*LOT-00001/ }).waitFor(slow);
    await scan(clerk, 'LOT-00001');
    await clerk.getByText('1 × Q301-12 for piston O-ring: the line is whole').waitFor(slow);
    await inspector.getByRole('link', { name: 'LOT-00001' }).waitFor(slow);
    await looksRight(clerk, 'pull');
  }, 60_000);

  test('is told why a scan is not taken, and can take one back', async () => {
    await scan(clerk, 'LOT-00001');
    await clerk.getByText('KIT-0001 has all the Q301-12 it needs').waitFor(slow);
    await scan(clerk, 'LOT-99999');
    await clerk.getByRole('alert').getByText('LOT-99999 is not the code of a lot').waitFor(slow);
    await clerk.getByText('earlier scans').click();
    await clerk.getByRole('button', { name: 'Undo' }).click();
    await clerk.getByText('The tray is empty').waitFor(slow);
    await inspector.getByText('The tray is empty').waitFor(slow);
  }, 60_000);

  test('orders what is short in three actions', async () => {
    await clerk.goto('/shortages?kit=KIT-0001');
    await clerk.getByText('Q301-13').first().click();
    await clerk.getByRole('button', { name: 'Order 1 line from Harrow Lea Seals' }).click();
    await looksRight(clerk, 'order');
    await clerk.getByRole('button', { name: 'Raise the order' }).click();
    await clerk.getByRole('heading', { name: 'What has come of PO-0002?' }).waitFor(slow);
    const { items } = await readsOf(shop)
      .purchaseOrder.findUniqueOrThrow({
        where: { number: 'PO-0002' },
        include: { lines: { include: { part: true } } },
      })
      .then(({ lines }) => ({ items: lines.map((line) => `${line.quantity} × ${line.part.number}`) }));
    expect(items).toEqual(['2 × Q301-13']);
  }, 60_000);

  const dialog = () => clerk.getByRole('dialog');
  const answer = (name: string) => dialog().getByRole('button', { name, exact: true }).click(slow);
  const refused = (text: string | RegExp) => dialog().getByRole('alert').getByText(text).first().waitFor(slow);
  /** Opens a dialog about the lot on the page. */
  const about = (name: string) => clerk.getByRole('button', { name, exact: true }).click(slow);
  async function place(label: RegExp, option: RegExp) {
    await dialog().getByRole('button', { name: label }).click(slow);
    await clerk.getByRole('option', { name: option }).click(slow);
  }

  test('moves pieces to a bin there is, and is pointed at one there is not', async () => {
    await clerk.goto('/find?code=LOT-00001');
    await clerk.getByRole('heading', { name: /^LOT-00001/ }).waitFor(slow);
    await about('Move');
    await dialog().getByLabel('To bin').fill('z-99');
    await dialog().getByLabel('How many').fill('4');
    await answer('Move');
    await refused('There is no bin Z-99');
    await dialog().getByLabel('To bin').fill('b-01');
    await answer('Move');
    await clerk.getByText('4 of LOT-00001 moved to B-01.').waitFor(slow);
  }, 60_000);

  test('counts: no less than none, and a large difference waits for another person', async () => {
    await about('Count');
    await place(/Where you counted/, /bin B-01/);
    await dialog().getByLabel('Pieces you counted').fill('-1');
    await dialog().getByLabel('Why it was counted').fill('cycle count');
    await answer('Enter the count');
    await refused(/A count cannot be negative/);
    await dialog().getByLabel('Pieces you counted').fill('3');
    await answer('Enter the count');
    await clerk.getByText('1 fewer than the ledger said.').waitFor(slow);
    await about('Count');
    await place(/Where you counted/, /bin A-01/);
    await dialog().getByLabel('Pieces you counted').fill('0');
    await dialog().getByLabel('Why it was counted').fill('cycle count');
    await answer('Enter the count');
    await clerk.getByText('Nothing is changed yet: another person decides about this count.').waitFor(slow);
    await clerk.goto('/counts');
    await clerk.getByText('waits for another person').first().waitFor(slow);
    await looksRight(clerk, 'counts');
    await clerk.goto('/find?code=LOT-00001');
    await clerk.getByRole('heading', { name: /^LOT-00001/ }).waitFor(slow);
  }, 60_000);

  test('scraps what is there and no more before a witness, and takes a movement back once', async () => {
    await about('Scrap');
    await place(/Where they lie/, /bin B-01/);
    await dialog().getByLabel('How many').fill('50');
    await dialog().getByLabel('Reason').fill('swollen');
    await answer('Go on to sign');
    await signWithWitness(clerk, 'Ines Birtwhistle');
    await clerk.getByRole('alertdialog').getByText('There is not that much there').first().waitFor(slow);
    await clerk.getByRole('alertdialog').getByRole('button', { name: 'Cancel' }).click(slow);
    await dialog().getByLabel('How many').fill('1');
    await answer('Go on to sign');
    await signWithWitness(clerk, 'Ines Birtwhistle');
    await clerk.getByText('1 of LOT-00001 are scrapped.').waitFor(slow);
    await clerk.getByRole('button', { name: 'Undo 4 from bin A-01 to bin B-01' }).click(slow);
    await dialog().getByLabel('Why it was wrong').fill('wrong bin');
    await answer('Undo it');
    await refused('There is not that much there');
    await answer('Cancel');
    const undo = clerk.getByRole('button', { name: 'Undo 1 from bin B-01 to scrap' });
    await undo.click(slow);
    await dialog().getByLabel('Why it was wrong').fill('wrong lot');
    await answer('Undo it');
    await clerk.getByText('1 of LOT-00001 are where they were.').waitFor(slow);
    await undo.waitFor({ ...slow, state: 'detached' });
  }, 60_000);

  test('adds a part number that may stand in, not one there is already', async () => {
    await clerk.goto('/parts');
    await about('Add a part number');
    const number = dialog().getByLabel('Part number', { exact: true });
    await number.fill('q301-12');
    await dialog().getByLabel('Maker').fill('Quillon');
    await dialog().getByLabel('Description').fill('O-ring, piston, other compound');
    await place(/Choose a class/, /^Seal$/i);
    await dialog().getByLabel('Lead time').fill('10');
    await dialog().getByLabel('Price of one').fill('2.10');
    await answer('Add the part number');
    await refused('Part number: This is taken already');
    expect(await number.getAttribute('aria-invalid')).toBe('true');
    await number.fill('q301-12b');
    await looksRight(clerk, 'add-part');
    await answer('Add the part number');
    await clerk.getByRole('heading', { name: /Q301-12B/ }).waitFor(slow);
  }, 60_000);

  test('changes an order line to what the supplier says', async () => {
    await clerk.goto('/orders');
    await clerk.getByRole('link', { name: 'PO-0002' }).click(slow);
    await about('Change Q301-13');
    await dialog().getByLabel('Why').fill('the supplier has six');
    await dialog().getByLabel('Ordered in all').fill('0');
    await answer('Change the line');
    await refused(/A quantity is at least one piece/);
    await dialog().getByLabel('Ordered in all').fill('6');
    await answer('Change the line');
    await clerk.getByText('Q301-13 on PO-0002 is changed.').waitFor(slow);
  }, 60_000);

  test('adds a bin, calls it something else, and a scanned bin opens', async () => {
    await clerk.goto('/places');
    await about('Add a bin');
    await dialog().getByLabel('Code').fill('a-01');
    await dialog().getByLabel('Place in the walk').fill('500');
    await answer('Add the bin');
    await refused('Code: This is taken already');
    await dialog().getByLabel('Code').fill('k-07');
    await answer('Add the bin');
    const sheet = clerk.getByRole('region', { name: 'bin K-07' });
    await sheet.getByText('Nothing lies here').waitFor(slow);
    await sheet.getByRole('button', { name: 'Change' }).click(slow);
    await dialog().getByLabel('What it is called').fill('Beside the door');
    await answer('Change it');
    await sheet.getByText('Beside the door').waitFor(slow);
    await scan(clerk, 'A-01');
    await clerk.getByRole('region', { name: 'bin A-01' }).getByRole('link', { name: 'LOT-00001' }).waitFor(slow);
    await looksRight(clerk, 'places');
  }, 60_000);

  test.each([
    'kits',
    'shortages',
    'receiving?without=order',
    'orders',
    'stock',
    'places',
    'parts',
    'expiring?days=365',
  ])(
    '%s has no accessibility fault in light and dark',
    async (path) => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await clerk.emulateMedia({ colorScheme });
        await clerk.goto(`/${path}`);
        await clerk.getByRole('heading', { level: 1 }).waitFor(slow);
        await clerk.waitForLoadState('networkidle').catch(() => undefined);
        await looksRight(clerk, `${path.replace(/\W+/g, '-')}-${colorScheme}`);
      }
    },
    60_000,
  );
});
