import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';
import { looksRight, signsWithPin } from '../support/looks.ts';
import { ShopApp } from '../support/shop-app.ts';
import { onShelf, resealKit } from '../support/tray-story.ts';
import { builtDashboard, pageOf, scan } from '../support/view-page.ts';

const head = 'part number,maker,description,class,issue unit,unit price,home bin';
const good = ['TB-1,Quillon,thin washer,hardware,piece,0.25,B-01', 'TB-2,Quillon,drive seal,seal,piece,4.50,A-01'];
const bad = [
  'TB-3,,no maker,hardware,piece,1.00,B-01',
  'TB-4,Quillon,comma price,hardware,piece,"1,25",B-01',
  'TB-5,Quillon,no such bin,hardware,barrel,1.00,Z-99',
];
const mended = [
  'TB-3,Quillon,with maker,hardware,piece,1.00,B-01',
  'TB-4,Quillon,point price,hardware,piece,1.25,B-01',
  'TB-5,Quillon,right bin,hardware,piece,1.00,A-02',
];

describe('the parts clerk brings tables in', () => {
  let shop: ShopApp;
  let browser: Browser;
  let clerk: Page;
  let inspector: Page;
  let kitId: string;
  const slow = { timeout: 15_000 };
  const file = (name: string, lines: readonly string[]) => ({
    name,
    mimeType: 'text/csv',
    buffer: Buffer.from(lines.join('\r\n')),
  });

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    kitId = await resealKit(shop);
    browser = await openBrowser();
    clerk = await pageOf(browser, shop, { signInName: 'caspar' });
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  test('three wrong rows are named at their cells; nothing can be taken over', async () => {
    await clerk.goto('/tables');
    await clerk.getByText('No table was taken over yet').waitFor(slow);
    await looksRight(clerk, 'tables-empty');
    await clerk.locator('input[type=file]').setInputFiles(file('parts.csv', [head, ...good, ...bad]));
    await clerk.getByText('3 rows wrong').waitFor(slow);
    await clerk.getByText('“1,25” is no price: write it with a point, such as 1250.50').waitFor(slow);
    await clerk.getByText('There is no bin Z-99').waitFor(slow);
    expect(await clerk.getByRole('button', { name: 'Take the table over' }).isDisabled()).toBe(true);
    await looksRight(clerk, 'tables-wrong-rows');
  });

  test('mended, the whole table is taken over; the same table again changes nothing', async () => {
    await clerk.locator('input[type=file]').setInputFiles(file('parts.csv', [head, ...good, ...mended]));
    await clerk.getByText('5 rows new').waitFor(slow);
    await clerk.getByText('0 rows wrong').waitFor(slow);
    await looksRight(clerk, 'tables-mended');
    await clerk.getByRole('button', { name: 'Take the table over' }).click();
    await clerk.getByText('Part numbers: 5 new, 0 changed, 0 the same.').waitFor(slow);
    await clerk.locator('input[type=file]').setInputFiles(file('parts.csv', [head, ...good, ...mended]));
    await clerk.getByText('Everything in this table is on record already.').waitFor(slow);
  });

  test('opening stock waits for an inspector, who accepts it by one signature', async () => {
    await clerk.goto('/tables?kind=opening-stock');
    const stock = [
      'part number,quantity,bin,supplier lot,certificate',
      'TB-1,400,B-01,L-1,C-1',
      'TB-3,20,B-01,L-2,C-2',
    ];
    await clerk.locator('input[type=file]').setInputFiles(file('stock.csv', stock));
    await clerk.getByText('2 rows new').waitFor(slow);
    await clerk.getByRole('button', { name: 'Take the table over' }).click();
    await clerk.getByText('Opening stock: 2 new, 0 changed, 0 the same.').waitFor(slow);
    await inspector.goto('/tables');
    await inspector.getByRole('button', { name: 'Accept 2' }).click();
    await signsWithPin(inspector);
    await inspector.getByText('2 lots accepted.').waitFor(slow);
    await looksRight(inspector, 'tables-accepted');
  });

  test('the value of it leads to the movements behind it', async () => {
    await clerk.goto('/value?search=TB-1');
    const row = clerk.getByRole('row', { name: /TB-1/ });
    await row
      .getByRole('link', { name: /100\.00/ })
      .first()
      .waitFor(slow);
    await looksRight(clerk, 'value');
    await row
      .getByRole('link', { name: /100\.00/ })
      .first()
      .click();
    await clerk.getByRole('heading', { name: 'Which movements of TB-1 are behind the number?' }).waitFor(slow);
    await clerk.getByText('opening stock').waitFor(slow);
    await looksRight(clerk, 'value-movements');
  });

  test('a kit is pulled by scan: shape, word and sentence say what became of it, and a lot is swapped', async () => {
    const [first, second] = await onShelf(shop, kitId);
    await clerk.goto(`/kits/${kitId}`);
    await clerk.getByLabel('Scan a lot into the tray').waitFor(slow);
    await scan(clerk, first);
    await clerk.getByText(`In the tray: ${first}`).waitFor(slow);
    await scan(clerk, 'LOT-99999');
    await clerk.getByText('Not taken: LOT-99999').waitFor(slow);
    await looksRight(clerk, 'kit-pulled-by-scan');
    await clerk.getByRole('button', { name: `Swap ${first} for another lot` }).click();
    await clerk.getByLabel('Lot that comes in').fill(second);
    await clerk.getByLabel('Why').fill('scratched face');
    await looksRight(clerk, 'kit-swap');
    await clerk.getByRole('button', { name: 'Swap the lots' }).click();
    await clerk.getByText(`${second} is in the tray in place of ${first}.`).waitFor(slow);
  });
});
