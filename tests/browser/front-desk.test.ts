// size: one story told in order; each step stands on the one before

import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { disposeFinding } from '../../apps/server/src/modules/findings/dispose-finding.command.ts';
import { raiseFinding } from '../../apps/server/src/modules/findings/raise-finding.command.ts';
import { chaserDays } from '../../apps/server/src/modules/quotes/send-quote.command.ts';
import { receiveUnit } from '../../apps/server/src/modules/work-orders/receive-unit.command.ts';
import { Database } from '../../apps/server/src/platform/database/client.ts';
import { demoPin } from '../../seed/data/people.ts';
import { readsOf, threeBlade } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { actorOf, as } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };

describe('a day at the front desk', () => {
  let shop: ShopApp;
  let browser: Browser;
  let desk: Page;
  let inspector: Page;
  let number: string;
  let workOrderId: string;
  let unitId: string;
  let tornDownId: string;

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    browser = await openBrowser();
    desk = await pageOf(browser, shop, { signInName: 'desk' });
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  /** No accessibility fault, and a picture kept. */
  async function looksRight(page: Page, name: string) {
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `front-desk-${name}`);
  }
  const order = () => readsOf(shop).workOrder.findUniqueOrThrow({ where: { id: workOrderId } });

  async function pick(label: string, text: string) {
    await desk.getByLabel(label, { exact: true }).fill(text);
    await desk
      .getByRole('option', { name: new RegExp(text) })
      .first()
      .click(slow);
  }
  async function choose(label: string, option: RegExp) {
    await desk.getByRole('button', { name: label }).click();
    await desk.getByRole('option', { name: option }).first().click(slow);
  }
  const tick = (name: string | RegExp, page = desk) => page.getByRole('checkbox', { name }).check({ force: true });
  const press = (name: string | RegExp, page = desk) => page.getByRole('button', { name }).first().click(slow);
  const answer = (name: string | RegExp) => desk.getByRole('dialog').getByRole('button', { name }).click(slow);

  test('lands on the desk; nobody waits yet', async () => {
    await desk.getByRole('heading', { name: 'Who is waiting for us, and whom do we owe an answer?' }).waitFor(slow);
    await desk.getByText('Nobody waits for an answer').waitFor(slow);
    await looksRight(desk, 'nobody');
  }, 60_000);

  test('a declared event says at once what it means, and takes back what does not answer it', async () => {
    await desk.getByRole('link', { name: 'Book a unit in' }).click();
    await pick('Customer', 'Brackenmoor');
    await pick('Model', 'Q3C-76');
    await tick('Propeller strike');
    await desk.getByText(/After propeller strike the manual asks for an inspection of its own/).waitFor(slow);
    await press(/What is asked for/);
    await desk.getByRole('option', { name: 'Strike inspection' }).waitFor(slow);
    expect(await desk.getByRole('option', { name: 'Reseal' }).count()).toBe(0);
    await desk.keyboard.press('Escape');
    await looksRight(desk, 'strike');
    await desk.getByRole('checkbox', { name: 'Propeller strike' }).uncheck({ force: true });
  }, 90_000);

  test('hours that are no hours and serials nobody typed are pointed at before anything is sent', async () => {
    await desk.getByLabel('Reason, in the customer’s words').fill('time between overhauls reached');
    await press('Book it in');
    await desk.getByText('Write hours such as 1234.5, or say unknown').first().waitFor(slow);
    await desk.getByText('Enter the serial, or say that it is not readable yet').first().waitFor(slow);
    expect(await readsOf(shop).workOrder.count()).toBe(0);
  }, 60_000);

  test('books a three-blade propeller in whose blade serials nobody can read', async () => {
    await choose('Aircraft', /ZZ-BMD/);
    await choose('Application', /Heronby Courser 4/);
    await choose('What is asked for', /^Overhaul/);
    await desk.getByLabel('Serial of the unit').fill('QP5001');
    const unit = desk.getByRole('group', { name: 'Hours and cycles of the unit' });
    await unit.getByLabel('Since new', { exact: true }).fill('2100.4');
    await unit.getByRole('checkbox', { name: 'Since overhaul: unknown' }).check({ force: true });
    await unit.getByLabel('Cycles since new', { exact: true }).fill('812');
    await choose('Which meter they come from', /tachometer/);
    await desk.getByRole('group', { name: 'Hub' }).getByLabel('Part number').fill('Q301-61');
    await desk.getByRole('group', { name: 'Hub' }).getByLabel('Serial', { exact: true }).fill('H-5001');
    await desk.getByRole('group', { name: 'Blade 1' }).getByLabel('Part number').fill('Q76-B');
    for (const blade of [1, 2, 3]) await tick(`Blade ${blade}: not readable yet`);
    await tick('Logbook');
    await tick('Removal tag');
    await press('Spinner dome');
    await looksRight(desk, 'book-in');
    await press('Book it in');
    await desk.getByText('is booked in: tag the box with it.').waitFor(slow);
    await desk.getByText('ask for: shipping list').waitFor(slow);
    const row = await readsOf(shop).workOrder.findFirstOrThrow();
    ({ id: workOrderId, number, unitId } = row);
    const parts = await readsOf(shop).installation.findMany({ where: { parentId: unitId }, include: { item: true } });
    expect(parts.map(({ position, item }) => [position, item.partNumber, item.serial])).toEqual(
      expect.arrayContaining([
        ['hub', 'Q301-61', 'H-5001'],
        ...[1, 2, 3].map((blade) => [`blade ${blade}`, 'Q76-B', null]),
      ]),
    );
    const [times] = await readsOf(shop).timeRecord.findMany({ where: { itemId: unitId } });
    expect(times).toMatchObject({
      sinceNewTenths: 21_004,
      sinceOverhaulTenths: null,
      sinceNewCycles: 812,
      meter: 'tachometer',
    });
  }, 120_000);

  test('the inspector signs the preliminary inspection; the desk is told it is not theirs', async () => {
    await desk.goto(`/work-orders/${workOrderId}`);
    await desk.getByText('Not possible now').click();
    await desk
      .getByText('Sign the preliminary inspection: no, because this is for: inspector.', { exact: true })
      .waitFor(slow);
    await desk.getByText('Ship: no, because nobody said OK to ship.').waitFor(slow);
    await inspector.goto(`/work-orders/${workOrderId}`);
    await press('Sign the preliminary inspection', inspector);
    await inspector.getByLabel('What you see').fill('as booked in, blades painted over their serials');
    await press('Go on to sign', inspector);
    await inspector.getByLabel('Your PIN').fill(demoPin);
    await press(/^Sign as/, inspector);
    await inspector.getByText(/signed by/).waitFor(slow);
    await looksRight(inspector, 'work-order');
  }, 90_000);

  test('a standard overhaul is quoted in no more than six actions', async () => {
    await desk.goto('/desk?show=theirs');
    await desk.getByText('No offer lies with a customer').waitFor(slow);
    let actions = 0;
    const act = (deed: Promise<void>) => {
      actions += 1;
      return deed;
    };
    await act(press(/we owe an answer/));
    await desk.getByText('waits for the estimate for Q3C-76 QP5001').waitFor(slow);
    await act(press(/Brackenmoor Air Charter waits for the estimate/));
    await act(press('Write the estimate'));
    await desk.getByText('Flat-rate labour').first().waitFor(slow);
    await looksRight(desk, 'estimate');
    await act(answer('Write it'));
    await act(answer('Send it'));
    await desk.getByText(/is on record as sent/).waitFor(slow);
    expect(actions).toBeLessThanOrEqual(6);
    expect(await order()).toMatchObject({ consent: 'estimate-sent' });
    const address = await desk.getByRole('link', { name: 'Open the PDF' }).getAttribute('href');
    const pdf = await desk.request.get(address ?? '');
    expect([pdf.status(), (await pdf.body()).subarray(0, 5).toString()]).toEqual([200, '%PDF-']);
    await answer('Done');
  }, 120_000);

  test('records the named person’s yes to the evaluation, up to a cap that fits the offer', async () => {
    await press(/They said yes/);
    await desk.getByLabel('Who said it').fill('Leda Varley');
    await desk.getByLabel('Evaluation approved up to').fill('999999');
    await answer('Record the approved evaluation');
    await desk
      .getByRole('dialog')
      .getByText(/An evaluation is approved up to a cap/)
      .waitFor(slow);
    expect(await order()).toMatchObject({ consent: 'estimate-sent' });
    await desk.getByLabel('Evaluation approved up to').fill('800');
    await looksRight(desk, 'approval');
    await answer('Record the approved evaluation');
    await desk.getByText(/The yes to .* is recorded/).waitFor(slow);
    expect(await order()).toMatchObject({ consent: 'evaluation-approved', evaluationCapMinor: 80_000 });
  }, 90_000);

  test('answers “when is it ready?” in one action, before and after a day is promised', async () => {
    await desk.getByLabel('Who calls about which unit?').fill('QP5001');
    await desk.getByRole('option', { name: /QP5001.*No day is promised yet.*Next: technician/ }).click(slow);
    await press('Promise a day');
    await desk.getByLabel('Ready to ship on').fill(day(30));
    await desk.getByLabel('Why this day').fill('told Leda Varley on the telephone');
    await answer('Promise this day');
    await desk.getByText(/^Promised for .*in (29|30|31) days\.$/).waitFor(slow);
    await desk.getByLabel('Who calls about which unit?').fill('QP5001');
    await desk.getByRole('option', { name: /QP5001.*Promised for/ }).waitFor(slow);
    // The open list hides the page behind it from readers; the page itself is scanned without it.
    await picture(desk, 'front-desk-who-calls');
  }, 90_000);

  test('the inspector reads a blade’s serial and signs for it', async () => {
    await inspector.goto(`/work-orders/${workOrderId}?tab=parts`);
    await inspector
      .getByRole('button', { name: /Read the serial/ })
      .nth(2)
      .waitFor(slow);
    await press(/Read the serial/, inspector);
    await inspector.getByLabel('Serial as read on the part').fill('b-77001');
    await press('Go on to sign', inspector);
    await inspector.getByLabel('Your PIN').fill(demoPin);
    await press(/^Sign as/, inspector);
    await inspector.getByRole('link', { name: 'B-77001' }).waitFor(slow);
    await inspector.getByRole('tab', { name: 'Parts (2 not read)' }).waitFor(slow);
    await looksRight(inspector, 'parts');
  }, 90_000);

  test('a hold stops work by name, and only its role lifts it', async () => {
    await desk.goto(`/work-orders/${workOrderId}?tab=holds`);
    await press('Hold');
    await choose('What it waits for', /Payment or deposit/);
    await desk.getByLabel('Why, in one line').fill('deposit before blades are ordered');
    await choose('Who may lift it', /Front desk/);
    await answer('Place the hold');
    await desk.getByText('held: deposit before blades are ordered', { exact: true }).waitFor(slow);
    await inspector.goto(`/work-orders/${workOrderId}?tab=holds`);
    await inspector.getByText('front desk lifts it').waitFor(slow);
    expect(await inspector.getByRole('button', { name: /Lift the hold/ }).count()).toBe(0);
    await press(/Lift the hold/);
    await desk.getByLabel('What settles it').fill('deposit came');
    await answer('Lift it');
    await desk.getByRole('tab', { name: 'Holds (0 open)' }).waitFor(slow);
  }, 90_000);

  test('a no is a path: tagged, packed, shipped and closed', async () => {
    const job = await Job.arrived(shop, 'QP5002');
    await desk.goto(`/work-orders/${job.id}?tab=quotes`);
    await press('Write the estimate');
    await answer('Write it');
    await answer('Send it');
    await answer('Done');
    await press(/They said no/);
    await desk.getByLabel('Who said it').fill('Leda Varley');
    await desk.getByText('Goes back in pieces, tagged unserviceable').click();
    await answer('Record the no');
    await desk.getByText('It goes back unrepaired.').waitFor(slow);
    await press('OK to ship');
    await answer('OK to ship');
    await desk
      .getByRole('dialog')
      .getByText(/every piece carries an unserviceable tag/)
      .first()
      .waitFor(slow);
    await tick('Every piece carries an unserviceable tag');
    await answer('OK to ship');
    await desk
      .getByRole('dialog')
      .getByText(/Not ticked: .*spinner dome/)
      .waitFor(slow);
    await tick(/spinner dome/);
    await tick(/mounting nuts/);
    await answer('OK to ship');
    await press(/^Ship$/);
    await desk.getByLabel('Carrier').fill('Picked up by the customer');
    await answer('It left the house');
    await press('Close the work order');
    await answer('Close the work order');
    await desk.getByText('It is closed.').waitFor(slow);
    expect((await job.workOrder()).stage).toBe('closed');
  }, 180_000);

  test('a serial that was here before offers its history and its parts', async () => {
    await desk.goto('/desk/book-in');
    await pick('Model', 'Q3C-76');
    await desk.getByLabel('Serial of the unit').fill('qp5002');
    await desk.getByText('has been here').waitFor(slow);
    await press('Take over its part numbers and serials');
    expect(await desk.getByRole('group', { name: 'Blade 2' }).getByLabel('Serial', { exact: true }).inputValue()).toBe(
      'B2-QP5002',
    );
    await desk.getByLabel('Serial of the unit').fill('QP5001');
    await desk.getByText('is in the shop now').waitFor(slow);
    await looksRight(desk, 'returning');
  }, 90_000);

  test('adds a customer with an aircraft and a reading, and changes which parts they accept', async () => {
    await desk.goto('/customers');
    await press('Add a customer');
    await desk.getByLabel('Code', { exact: true }).fill('withy');
    await desk.getByLabel('Name', { exact: true }).fill('Withy Bridge Aero Club');
    await tick('maker’s new');
    await answer('Add the customer');
    await press('Add an aircraft');
    await desk.getByLabel('Registration').fill('zz-wba');
    await desk.getByLabel('Airframe').fill('Heronby Pinnace');
    await desk.getByLabel('Engine').fill('Brindle B-360');
    await answer('Add the aircraft');
    await press('Record a reading of ZZ-WBA');
    await choose('Which meter', /tachometer/);
    await desk.getByLabel('It read').fill('1204.3');
    await answer('Record the reading');
    await desk.getByText(/tachometer 1,204\.3/).waitFor(slow);
    await press('Change');
    await tick('used serviceable');
    await answer('Change it');
    await desk.getByText('maker’s new, used serviceable').waitFor(slow);
    await looksRight(desk, 'customer');
  }, 120_000);

  test('every role reads a work order, and the server refuses what the page does not offer', async () => {
    const technician = await as(shop, 'technician');
    expect((await technician.call(workOrderOperations.workOrder, { workOrderId })).status).toBe(200);
    const { version } = await order();
    const refused = await technician.call(
      workOrderOperations.setPromise,
      { workOrderId, promisedOn: day(10), reason: 'sooner' },
      { version },
    );
    expect(refused.status).toBe(403);
  }, 60_000);

  test('the desk fills: oldest first, what came in, what an offer waits for', async () => {
    const arrivals = ['QP5003', 'QP5004'];
    for (const serial of arrivals)
      await shop.run(receiveUnit, await threeBlade(shop, serial), await actorOf(shop, 'front-desk'));
    const job = await Job.arrived(shop, 'QP5005');
    await job.tornDown();
    tornDownId = job.id;
    await desk.goto('/desk');
    const sentences = desk.getByRole('region', { name: 'Answers owed' }).getByRole('listitem');
    await sentences.nth(1).waitFor(slow);
    expect(await sentences.allTextContents()).toEqual(
      arrivals.map((serial) => expect.stringContaining(`waits for the estimate for Q3C-76 ${serial}.`)),
    );
    await desk.getByRole('region', { name: 'Came in, not looked at' }).getByRole('button').nth(1).waitFor(slow);
  }, 120_000);

  test('the inspector declares it inspected, the desk may not; the firm quote is written and sent', async () => {
    await desk.goto(`/work-orders/${tornDownId}?tab=quotes`);
    await desk.getByText('Not possible now').click();
    await desk.getByText('Declare it inspected: no, because this is for: inspector.', { exact: true }).waitFor(slow);
    await inspector.goto(`/work-orders/${tornDownId}`);
    await press('Declare it inspected', inspector);
    await inspector.getByText(/Steps still open on: TR-/).waitFor(slow);
    await inspector.getByRole('dialog').getByRole('button', { name: 'Declare it inspected' }).click();
    await inspector.getByText(/is inspected; the firm quote is due/).waitFor(slow);
    await press('Write the firm quote');
    await desk.getByLabel('Ready within').fill('0');
    await answer('Write it');
    await desk
      .getByRole('dialog')
      .getByRole('alert')
      .getByText(/Ready within: This is at least 1/)
      .waitFor(slow);
    await desk.getByLabel('Ready within').fill('21');
    await looksRight(desk, 'firm');
    await answer('Write it');
    await answer('Send it');
    await desk.getByText(/is on record as sent/).waitFor(slow);
    await answer('Done');
  }, 120_000);

  test('reminders are recorded one by one; silence is none before the last of them is due', async () => {
    for (const _ of chaserDays) {
      await press(/^They were reminded/);
      await desk.getByLabel(/Whom you reached/).fill('left word with the office');
      await answer('They were reminded');
      await desk.getByRole('dialog').waitFor({ ...slow, state: 'detached' });
    }
    await press(/^No answer came/);
    await answer('Record the silence');
    await desk
      .getByRole('dialog')
      .getByText(/The last chaser is dated/)
      .waitFor(slow);
    await answer('Cancel');
    await shop.running.app.get(Database).prisma.chaser.updateMany({ data: { dueOn: new Date(day(-1)) } });
    await press(/^No answer came/);
    await answer('Record the silence');
    await desk.getByText(/is held for the customer/).waitFor(slow);
    const held = await readsOf(shop).workOrder.findUniqueOrThrow({ where: { id: tornDownId } });
    expect(held.consent).toBe('quote-silent');
  }, 120_000);

  test('what is found later is over and above: offered and approved whole, before the work it pays for', async () => {
    const job = await Job.arrived(shop, 'QP5006');
    await job.inWork();
    const { travelerId } = await job.nextAt('blade 1');
    const found = { area: 'leading-edge', damage: 'nicked', place: 'station 24', description: 'deep nick' } as const;
    const { id: findingId } = await shop.run(raiseFinding, { travelerId, ...found }, job.people.technician);
    const decision = {
      ...{ findingId, disposition: 'repair' as const, labourMinor: 12_000, signature: { pin: demoPin } },
      steps: [{ title: 'Blend the nick', process: 'blade-repair' as const, standardMinutes: 40 }],
    };
    await shop.run(disposeFinding, decision, job.people.inspector, { version: 1 });
    await desk.goto(`/work-orders/${job.id}?tab=quotes`);
    await press('Write over-and-above');
    await answer('Write it');
    await answer('Send it');
    await answer('Done');
    await press(/^They said yes/);
    await desk.getByLabel('Who said it').fill('Leda Varley');
    await desk.getByLabel('Approved amount').fill('1');
    await answer('Record the yes');
    await desk
      .getByRole('dialog')
      .getByRole('alert')
      .getByText(/Approved amount:/)
      .waitFor(slow);
    const { totalMinor } = await readsOf(shop).quote.findFirstOrThrow({
      where: { workOrderId: job.id, kind: 'over-and-above' },
    });
    await desk.getByLabel('Approved amount').fill((totalMinor / 100).toFixed(2));
    await looksRight(desk, 'over-and-above');
    await answer('Record the yes');
    await desk.getByText(/The yes to .* is recorded/).waitFor(slow);
  }, 180_000);

  test.each([
    ['desk', () => '/desk'],
    ['desk-theirs', () => '/desk?show=theirs'],
    ['book-in-empty', () => '/desk/book-in'],
    ['work-orders', () => '/work-orders?stage=all'],
    ['quotes', () => `/work-orders/${workOrderId}?tab=quotes`],
    ['travelers', () => `/work-orders/${tornDownId}?tab=travelers`],
    ['overview', () => `/work-orders/${workOrderId}`],
    ['customers', () => '/customers'],
    ['unit', () => `/units/${unitId}`],
    ['coming-due', () => '/coming-due'],
  ])(
    '%s has no accessibility fault in light, dark and on a tablet',
    async (name, path) => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await desk.emulateMedia({ colorScheme });
        await desk.goto(path());
        await desk.getByRole('heading', { level: 1 }).waitFor(slow);
        await desk.waitForLoadState('networkidle').catch(() => undefined);
        await looksRight(desk, `${name}-${colorScheme}`);
      }
      await desk.emulateMedia({ colorScheme: 'light' });
      await desk.setViewportSize({ width: 1180, height: 820 });
      await looksRight(desk, `${name}-tablet`);
      await desk.setViewportSize({ width: 1366, height: 768 });
    },
    90_000,
  );

  test('the work order list keeps its filters in the address and exports as CSV', async () => {
    await desk.goto('/work-orders?stage=all');
    await desk.getByLabel('Number, serial, customer').fill('QP5002');
    await desk.waitForURL(/search=QP5002/);
    await desk.getByRole('row', { name: /QP5002/ }).waitFor(slow);
    await desk.getByRole('row', { name: new RegExp(number) }).waitFor({ ...slow, state: 'detached' });
    const download = desk.waitForEvent('download');
    await press('Export CSV');
    expect((await download).suggestedFilename()).toBe('work-orders.csv');
  }, 60_000);
});
