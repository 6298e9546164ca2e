import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { issueChecklist } from '../../apps/server/src/modules/inventory/issue-checklist.command.ts';
import { setNeedBy } from '../../apps/server/src/modules/kits/set-need-by.command.ts';
import { setOffer } from '../../apps/server/src/modules/purchasing/set-offer.command.ts';
import { receiveUnit } from '../../apps/server/src/modules/work-orders/receive-unit.command.ts';
import { readsOf, threeBlade } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { day } from '../support/days.ts';
import { actorOf } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

/** A reseal kit needed in a month, a supplier that sells its piston O-ring in tens, and a checklist for seals. */
async function aKitAndAnOffer(shop: ShopApp): Promise<void> {
  const [parts, inspector] = [await actorOf(shop, 'parts'), await actorOf(shop, 'inspector')];
  const arrival = await threeBlade(shop, '5511', { scope: 'reseal' });
  const { kitId } = await shop.run(receiveUnit, arrival, await actorOf(shop, 'desk'));
  if (!kitId) throw new Error('The reseal has no kit');
  const kit = await readsOf(shop).kit.findUniqueOrThrow({ where: { id: kitId } });
  await shop.run(setNeedBy, { kitId, needBy: day(30) }, parts, { version: kit.version });
  const part = await readsOf(shop).part.findUniqueOrThrow({ where: { number: 'Q301-12' } });
  const terms = { preference: 1, packSize: 10, minimum: 20, leadTimeDays: 12 };
  const breaks = [{ from: 1, unitPrice: '9.20' }];
  await shop.run(setOffer, { partId: part.id, supplierId: part.supplierId ?? '', ...terms, breaks }, parts);
  const items = ['Sealed in its own bag, cure date on it', 'No nick, flat or bloom'];
  await shop.run(issueChecklist, { partClass: 'seal', items }, inspector);
}

describe('buying, as the parts clerk', () => {
  let shop: ShopApp;
  let browser: Browser;
  let clerk: Page;
  const slow = { timeout: 15_000 };

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    await aKitAndAnOffer(shop);
    browser = await openBrowser();
    clerk = await pageOf(browser, shop, { signInName: 'caspar' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  async function looksRight(name: string) {
    expect(await accessibilityFaults(clerk)).toEqual([]);
    await picture(clerk, `buying-${name}`);
  }

  test('sees what to buy and reads why twenty', async () => {
    await clerk.goto('/buying?search=Q301-12');
    const row = clerk.getByRole('row', { name: /Q301-12/ });
    await row.waitFor(slow);
    await row.getByText('Why 20?').click();
    await row.getByText(/days to a delivery, as agreed with Harrow Lea Seals/).waitFor(slow);
    await row.getByText(/the supplier’s least/).waitFor(slow);
    expect(await row.getByRole('listitem').first().textContent()).toMatch(/short for KIT-0001/);
    expect(await row.getByRole('listitem').first().getByRole('link').getAttribute('href')).toMatch(/^\/kits\//);
    await looksRight('why');
  }, 60_000);

  test('orders it in two actions', async () => {
    await clerk.getByRole('button', { name: 'Order 1 line from Harrow Lea Seals' }).click();
    expect(await clerk.getByLabel('How many').inputValue()).toBe('20');
    await looksRight('order');
    await clerk.getByRole('button', { name: 'Raise the order' }).click();
    await clerk.getByRole('heading', { name: 'What has come of PO-0001?' }).waitFor(slow);
  }, 60_000);

  test('says that it was sent, and writes down what the supplier confirmed', async () => {
    await clerk.getByRole('button', { name: 'It was sent' }).click();
    await clerk.getByLabel('How it was sent').fill('e-mail');
    await clerk.getByRole('dialog').getByRole('button', { name: 'It was sent' }).click();
    await clerk.getByText('the supplier has this one').waitFor(slow);
    await clerk.getByRole('button', { name: 'The supplier confirmed' }).click();
    await clerk.getByLabel('Supplier’s reference').fill('HL-40021');
    await clerk.getByLabel('Will bring').fill('12');
    await looksRight('confirm');
    await clerk.getByRole('button', { name: 'Write down the confirmation' }).click();
    await clerk.getByText('confirmed for 12').waitFor(slow);
    await looksRight('order-page');
    await clerk.goto('/to-chase');
    await clerk.getByText(/is confirmed for 12 of 20/).waitFor(slow);
    await looksRight('chase');
  }, 60_000);

  test('receives a part of it by the checklist, and is offered the label', async () => {
    await clerk.goto('/receiving');
    await clerk.getByRole('link', { name: /Q301-12/ }).click();
    await clerk.getByLabel('How many you counted').fill('8');
    await clerk.getByLabel('Delivery note').fill('DN-88');
    await clerk.getByLabel('Supplier’s lot').fill('HL-1');
    await clerk.getByLabel('Certificate').fill('HLC-1');
    await clerk.getByRole('textbox', { name: 'Cure date' }).fill(day(-60));
    await clerk.getByText('maker’s new').click();
    await clerk.getByRole('button', { name: 'Receive into quarantine' }).click();
    await clerk.getByText('The receiving checklist is not answered').first().waitFor(slow);
    for (const item of ['Sealed in its own bag, cure date on it', 'No nick, flat or bloom'])
      await clerk.getByRole('radiogroup', { name: item }).getByText('good', { exact: true }).click();
    await looksRight('checklist');
    await clerk.getByRole('button', { name: 'Receive into quarantine' }).click();
    const label = clerk.getByRole('link', { name: 'Print the label' });
    await label.waitFor(slow);
    const paper = await clerk.request.get((await label.getAttribute('href')) ?? '');
    expect(paper.headers()['content-type']).toContain('application/pdf');
  }, 60_000);

  test('holds a wrong part and sends it back; the order stays open', async () => {
    await clerk.goto('/receiving');
    await clerk.getByRole('link', { name: /Q301-12/ }).click();
    await clerk.getByRole('button', { name: 'Another part, or too many: hold it' }).click();
    await clerk.getByLabel('What came').fill('Q301-13');
    await clerk.getByLabel('How many are held').fill('4');
    await looksRight('hold');
    await clerk.getByRole('button', { name: 'Hold it', exact: true }).click();
    const row = clerk.getByRole('row', { name: /HELD-0001.*4 × Q301-13/ });
    await row.waitFor(slow);
    await row.getByRole('button', { name: 'Send back HELD-0001' }).click();
    await clerk.getByLabel('Under which paper').fill('RMA 9');
    await clerk.getByRole('button', { name: 'It went back' }).click();
    await clerk.getByText('Nothing is held').waitFor(slow);
    await clerk.getByRole('row', { name: /Q301-12.*12/ }).waitFor(slow);
    await looksRight('receiving');
  }, 60_000);

  test('reads whom the shop may buy from, and how they deliver', async () => {
    await clerk.goto('/suppliers');
    await clerk.getByRole('link', { name: /Harrow Lea Seals/ }).waitFor(slow);
    await looksRight('suppliers');
    await clerk.getByRole('link', { name: /Harrow Lea Seals/ }).click();
    await clerk.getByText('By the day first promised').waitFor(slow);
    await looksRight('supplier');
  }, 60_000);
});
