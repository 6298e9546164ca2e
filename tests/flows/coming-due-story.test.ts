// size: one story told in order; each step stands on the one before
import { customerOperations } from '@hubwright/contracts/customers/operations';
import { readingsOperations } from '@hubwright/contracts/customers/readings-operations';
import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import { findingOperations } from '@hubwright/contracts/findings/operations';
import { fleetTableOperations as tables } from '@hubwright/contracts/imports/fleet-operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { unitHistoryOperations } from '@hubwright/contracts/units/unit-history-operations';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { addMonths } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { ReminderMail } from '../../apps/server/src/modules/reminders/reminder-mail.ts';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { returnUnrepaired } from '../../apps/server/src/modules/work-orders/return-unrepaired.command.ts';
import { type Arrival, readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { type FleetAircraft, fleetFile, trainingFleet } from '../support/fleet-file.ts';
import { Job } from '../support/job.ts';
import { MailCatcher } from '../support/mail-catcher.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';
import { sendTable } from '../support/tables.ts';

/*
 * Sixty single-engined aircraft of a club, a three-blade propeller on each. By hand, hours in tenths, i from 0 to 59:
 *
 *   since new today        20000 + 71 i  at installation  +  500 + 37 i  flown since  =  20500 + 108 i
 *   since overhaul today   i mod 5                        +  500 + 37 i
 *   due                    72 months after the overhaul, which is 6 + i months ago: i = 0 … 59 → in 66 … 7 months. The 2000.0 h
 *                          of the manual are further off for all of them: at 50.0 to 268.8 h in 6 to 65 months the fastest flies
 *                          8.3 h a month, and 2000 h take 240 months.
 *
 *   A = i 0   since new 20500; in the shop today: its meter 10500
 *   B = i 1   since new 20608; in the shop today: its meter 10650
 *   blade 1 of A: declared 5123 on arrival; moved to B; B flies 10650 … 11105 = 455 → 5578
 *   B at the end: 20608 + 455 = 21063; released today, so since overhaul 0 + 455 = 455, and due 72 months from today:
 *   its aircraft read 1065.0 h ten days before today and 1110.5 h fifty days after: 45.5 h in 60 days, 0.758 h a day, so that the
 *   1954.5 h left take 2577 days, and 72 months (2191 or 2192 days) come first
 */
const fleetOf = 60;
const [a, b] = [0, 1];

describe('a fleet comes in by table, is followed, worked on and told when it is due', () => {
  const clock = new MovedClock();
  let catcher: MailCatcher;
  let shop: ShopApp;
  let desk: Visitor;
  let customerId: string;
  let fleet: FleetAircraft[];
  let jobs: { a: Job; b: Job };
  const item = async (serial: string) =>
    (await readsOf(shop).serializedItem.findFirstOrThrow({ where: { serial } })).id;
  const timesOf = async (serial: string) =>
    (await desk.call(intervalOperations.itemTimes, { itemId: await item(serial) })).body;
  const sent = async (bytes: string) => {
    const path = `/api/customers/${customerId}/fleet-tables/fleet`;
    const { status, body } = await sendTable(shop, desk, { kind: 'fleet', bytes, path });
    expect({ status, body }).toMatchObject({ status: 200 });
    return body.id;
  };
  const preview = async (importId: string, more: { only?: 'wrong'; mapping?: string } = {}) =>
    (await desk.call(tables.previewFleetTable, { importId, limit: 200, ...more })).body;
  /** The club calls a model a “Prop”: no heading says so, the person at the desk does. */
  const named = async (importId: string) => {
    const { mapping, missing } = await preview(importId);
    expect(missing).toEqual(['model']);
    return { ...mapping, model: 3 };
  };
  const asText = (mapping: object) =>
    Object.entries(mapping)
      .map(([field, column]) => `${field}:${column}`)
      .join(',');
  const aircraft = async () => (await desk.call(customerOperations.listAircraft, { customerId, limit: 200 })).body.rows;

  const standing = async () =>
    (await desk.call(directiveOperations.unitDirectives, { unitId: jobs.b.unitId })).body.standings.find(
      ({ directive }) => directive.number === 'D-2026-31',
    );
  /** Packed, on its way and its order closed, by the desk. */
  const leaves = async (job: Job, more: { taggedUnserviceable?: boolean }) => {
    const loose = await readsOf(shop).looseItem.findMany({ where: { workOrderId: job.id } });
    const called = async <Answer extends { status: number; body: unknown }>(answer: Promise<Answer>) => {
      const { status, body } = await answer;
      expect({ status, body }).toMatchObject({ status: 200 });
    };
    const at = async () => ({ version: (await job.workOrder()).version });
    const packed = { workOrderId: job.id, looseItemsPacked: loose.map(({ id }) => id), ...more };
    await called(desk.call(workOrderOperations.okToShip, packed, await at()));
    await called(
      desk.call(workOrderOperations.shipUnit, { workOrderId: job.id, carrier: 'Tansy Carriers' }, await at()),
    );
    await called(desk.call(workOrderOperations.closeWorkOrder, { workOrderId: job.id }, await at()));
  };

  beforeAll(async () => {
    catcher = await MailCatcher.open();
    shop = await ShopApp.open('shop', { clock, smtpUrl: catcher.url });
    desk = await as(shop, 'front-desk');
    customerId = (await readsOf(shop).customer.findUniqueOrThrow({ where: { code: 'OXLIP' } })).id;
    fleet = trainingFleet(fleetOf, day(0));
  }, 120_000);
  afterAll(async () => {
    await shop?.close();
    await catcher?.down();
  });

  it('is refused whole while five rows are wrong, each named at its cell', async () => {
    const before = (await aircraft()).length;
    const importId = await sent(
      fleetFile(fleet, {
        3: { prop: 'Q3C76' },
        11: { serial: 'TF001' },
        24: { tsn: '12.0', tso: '40.0' },
        37: { asOf: day(2) },
        52: { now: '1.0' },
      }),
    );
    const mapping = await named(importId);
    const shown = await preview(importId, { only: 'wrong', mapping: asText(mapping) });
    expect(shown.counts).toEqual({ new: 55, changed: 0, same: 0, wrong: 5 });
    expect(shown.rows.map(({ line, errors }) => [line, errors.map(({ field }) => field)])).toEqual([
      [5, ['model']],
      [13, ['serial']],
      [26, ['sinceOverhaul']],
      [39, ['readOn']],
      [54, ['reading']],
    ]);
    const request = { operation: tables.applyFleetTable, input: { importId, mapping } };
    const refused = await expectRefused({ shop, visitor: desk }, request, { status: 409, type: 'rows-wrong' });
    expect(refused.detail).toBe('5 of 60 rows cannot be taken over');
    expect((await aircraft()).length).toBe(before);
  });

  it('is taken over once mended; the same file again, read as it was told the first time, changes nothing', async () => {
    const importId = await sent(fleetFile(fleet));
    const mapping = await named(importId);
    const { counts } = await preview(importId, { mapping: asText(mapping) });
    expect(counts).toEqual({ new: fleetOf, changed: 0, same: 0, wrong: 0 });
    expect((await desk.call(tables.applyFleetTable, { importId, mapping })).body).toMatchObject({ counts });
    const again = await preview(await sent(fleetFile(fleet)));
    expect(again.counts).toEqual({ new: 0, changed: 0, same: fleetOf, wrong: 0 });
    expect(again).toMatchObject({ how: { model: 'remembered' } });
  });

  it('has the times and due dates a hand adds up, for every one of the sixty', async () => {
    for (const [i, { serial, overhauledOn }] of fleet.entries()) {
      const times = await timesOf(serial);
      expect([serial, times.sinceNew.tenths, times.sinceOverhaul.tenths]).toEqual([
        serial,
        20_500 + 108 * i,
        500 + 37 * i + (i % 5),
      ]);
      const due = (await desk.call(dueDateOperations.nextDue, { unitId: await item(serial) })).body;
      expect([serial, due.dueOn, due.governedBy]).toEqual([serial, addMonths(overhauledOn, 72), 'calendar']);
    }
  }, 60_000);

  it('the due list of the club has all sixty, the one overhauled longest ago first', async () => {
    const { rows } = (await desk.call(dueDateOperations.comingDue, { customerId, days: 3_660, limit: 200 })).body;
    const own = rows.filter(({ unit }) => unit.serial.startsWith('TF'));
    expect(own.map(({ unit, registration, dueOn }) => [unit.serial, registration, dueOn])).toEqual(
      fleet
        .map(({ serial, registration, overhauledOn }) => [serial, registration, addMonths(overhauledOn, 72)])
        .toReversed(),
    );
  });

  it('two of them come in; a blade moves from one to the other through a work order', async () => {
    const planes = new Map((await aircraft()).map(({ id, registration }) => [registration, id]));
    const arrived = (at: number, meterTenths: number, sinceNewTenths: number) => {
      const { serial, registration } = fleet[at] as FleetAircraft;
      const parts: Arrival['parts'] = [
        { kind: 'hub', position: 'hub', partNumber: 'Q301-61', serial: `H-${serial}` },
        ...[1, 2, 3].map((blade) => ({
          ...{ kind: 'blade' as const, position: `blade ${blade}`, partNumber: 'Q76-B', serial: `B${blade}-${serial}` },
          ...{ sinceNewTenths: 5_122 + blade, sinceOverhaulTenths: 'unknown' as const },
        })),
      ];
      const times = {
        sinceNewTenths,
        sinceOverhaulTenths: 'unknown' as const,
        meter: 'tachometer' as const,
        meterTenths,
      };
      return Job.arrived(shop, serial, { customerId, aircraftId: planes.get(registration), parts, times });
    };
    jobs = { a: await arrived(a, 10_500, 20_500), b: await arrived(b, 10_650, 20_608) };
    expect((await timesOf('TF001')).doubts).toEqual([]);
    await jobs.b.tornDown();
    await jobs.a.inWork();
    const [technician, inspector] = [await as(shop, 'technician'), await as(shop, 'inspector')];
    const where = { workOrderId: jobs.b.id, position: 'blade 2' };
    const traveler = await readsOf(shop).traveler.findFirstOrThrow({ where });
    const raised = {
      travelerId: traveler.id,
      area: 'leading-edge',
      damage: 'nicked',
      place: '20 in',
      description: 'deep',
    };
    const { id: findingId } = (await technician.call(findingOperations.raiseFinding, raised as never)).body;
    const { version } = (await inspector.call(findingOperations.finding, { findingId })).body;
    const reject = { findingId, disposition: 'reject', signature: pin };
    expect((await inspector.call(findingOperations.disposeFinding, reject as never, { version })).status).toBe(200);
    const back = { workOrderId: jobs.a.id, decidedByName: 'Emrys Tolland', reason: 'its blade 1 goes to TF002' };
    await shop.run(returnUnrepaired, back, jobs.a.people.desk, { version: (await jobs.a.workOrder()).version });
    const fitted = {
      ...{ findingId, maker: 'Quillon', partNumber: 'Q76-B', serial: 'B1-TF001' },
      ...{ sinceNewTenths: 'unknown' as const, sinceOverhaulTenths: 'unknown' as const },
    };
    expect((await technician.call(findingOperations.fitReplacement, fitted)).status).toBe(200);
    expect(await timesOf('B1-TF001')).toMatchObject({
      sinceNew: { tenths: 5_123 },
      where: { words: `At blade 2 of Q3C-76 TF002, which is in the shop on ${jobs.b.number}` },
    });
  }, 60_000);

  it('a directive that concerns one of them is found on it', async () => {
    const inspector = await as(shop, 'inspector');
    const { modelId } = await jobs.b.workOrder();
    const issued = await inspector.call(directiveOperations.issueDirective, {
      ...{ kind: 'airworthiness-directive', number: 'D-2026-31', title: 'Blade clamp', issuer: 'the authority' },
      ...{ issuedOn: '2026-01-10', effectiveOn: '2026-02-01', binding: 'required', repeats: 'one-time' },
      ...{ action: 'Look at the blade clamps under light.', signature: pin },
      lines: [{ modelId, serialFrom: 'TF002', serialTo: 'TF002' }],
    });
    expect(issued.status).toBe(200);
    expect(await standing()).toMatchObject({ state: 'open' });
  });

  it('is not released while the directive is open', async () => {
    const { open } = (
      await (await as(shop, 'sunniva')).call(releaseOperations.releaseChecklist, { workOrderId: jobs.b.id })
    ).body;
    expect(open.map(({ what }) => what)).toContainEqual(expect.stringContaining('D-2026-31'));
  });

  it('the directive is complied with on its work order', async () => {
    const inspector = await as(shop, 'inspector');
    const directiveId = (await standing())?.directive.id ?? '';
    const done = await inspector.call(directiveOperations.recordCompliance, {
      ...{ workOrderId: jobs.b.id, directiveId, itemId: jobs.b.unitId, outcome: 'done' as const },
      ...{ method: 'Looked at all six halves: no crack', signature: pin },
    });
    expect(done.body).toMatchObject({ state: 'complied' });
    expect(await standing()).toMatchObject({
      state: 'complied',
      last: { method: 'Looked at all six halves: no crack' },
    });
  });

  it('the one goes through the shop to its release and leaves; the other goes back in pieces, tagged', async () => {
    const inspector = await as(shop, 'sunniva');
    await jobs.b.signed('evaluation');
    await jobs.b.approved('firm');
    await jobs.b.signed('repair');
    // The blade is the club's own: it says in so many words that such a one may be fitted.
    const club = await readsOf(shop).customer.findUniqueOrThrow({ where: { id: customerId } });
    const { id: _, version: before, code: __, ...details } = club;
    const agreed = { ...details, customerId, acceptedSources: [...club.acceptedSources, 'customer-supplied'] };
    const changed = await desk.call(customerOperations.changeCustomer, agreed as never, { version: before });
    expect({ status: changed.status, body: changed.body }).toMatchObject({ status: 200 });
    await jobs.b.takenOff();
    await jobs.b.signed('build');
    await jobs.b.filled();
    await shop.run(closeBuild, { workOrderId: jobs.b.id, signature: pin }, jobs.b.people.technician);
    await jobs.b.signed('final');
    const { version } = await jobs.b.workOrder();
    const approved = await inspector.call(
      releaseOperations.approveRelease,
      { workOrderId: jobs.b.id, signature: pin },
      { version },
    );
    expect({ status: approved.status, body: approved.body }).toMatchObject({ status: 200 });
    await leaves(jobs.b, {});
    await leaves(jobs.a, { taggedUnserviceable: true });
    for (const job of [jobs.a, jobs.b]) expect((await job.workOrder()).stage).toBe('closed');
  }, 120_000);

  it('it flies again, and every total is the one added up by hand', async () => {
    clock.seconds = 60 * 86_400;
    desk = await as(shop, 'front-desk');
    const plane = (await aircraft()).find(({ registration }) => registration === fleet[b]?.registration);
    const meter = 'tachometer' as const;
    const on = { aircraftId: plane?.id ?? '', position: 'single' as const, meter, from: day(5), fromTenths: 10_650 };
    const reported = { ...on, itemId: jobs.b.unitId, basis: 'owner by telephone' };
    expect((await desk.call(intervalOperations.reportInstalled, reported)).status).toBe(200);
    const readings = { customerId, readOn: day(50), basis: 'owner by telephone' };
    const rows = [{ aircraftId: plane?.id ?? '', meter, hoursTenths: 11_105 }];
    expect((await desk.call(readingsOperations.recordReadings, { ...readings, rows })).body).toMatchObject({
      recorded: 1,
    });
    expect((await timesOf('B1-TF001')).sinceNew.tenths).toBe(5_123 + 455);
    expect((await timesOf('B2-TF002')).sinceNew.tenths).toBe(5_124);
    expect((await timesOf('TF002')).sinceNew.tenths).toBe(20_608 + 455);
    expect((await timesOf('TF003')).sinceNew.tenths).toBe(20_500 + 108 * 2);
    // The release began its time since overhaul anew. A blade fitted in the place of another keeps its own, which nobody ever knew.
    // Of the one that went back in pieces nobody said where it is since: silence is not zero hours.
    expect((await timesOf('TF002')).sinceOverhaul.tenths).toBe(455);
    expect((await timesOf('B1-TF001')).sinceOverhaul).toMatchObject({ tenths: 'unknown', atLeastTenths: 455 });
    expect((await timesOf('TF001')).sinceNew).toMatchObject({ tenths: 'unknown', atLeastTenths: 20_500 });
    const due = (await desk.call(dueDateOperations.nextDue, { unitId: jobs.b.unitId })).body;
    expect([due.dueOn, due.governedBy]).toEqual([addMonths(day(0), 72), 'calendar']);
  });

  it('the club is told of the one that comes to its interval, once, and the log says where the letter went', async () => {
    const manager = await as(shop, 'manager');
    const settings = {
      ...{
        isOn: true,
        intervals: [180, 90, 30],
        senderName: 'Due dates desk',
        senderEmail: 'due@tansyhollow.example.com',
      },
      ...{ replyTo: 'desk@tansyhollow.example.com', subject: 'Units that are likely to fall due' },
      ...{ opening: 'We keep the due dates of what we overhauled.', closing: 'Tell us when it suits you.' },
      reason: 'agreed in the office',
    };
    expect((await manager.call(reminderOperations.changeReminderSettings, settings, { version: 0 })).status).toBe(200);
    const own = async () =>
      (await desk.call(reminderOperations.dueLetters, {})).body.rows.find(({ customer }) => customer.id === customerId);
    // Sixty days on: the last of the fleet, due in 7 months then, has 152 to 155 days left; the one before, 182 to 185.
    const units = (await own())?.units ?? [];
    expect(units.map(({ serial, intervalDays }) => [serial, intervalDays])).toEqual([['TF060', 180]]);
    const letters = [
      {
        ...{ customerId, way: 'e-mail' as const },
        units: units.map(({ unitId, intervalDays }) => ({ unitId, intervalDays })),
      },
    ];
    const sentBy = await desk.call(reminderOperations.sendReminders, { letters });
    expect(sentBy.status).toBe(200);
    await shop.running.app.get(ReminderMail).sendDue();
    expect(catcher.caught).toHaveLength(1);
    expect(catcher.caught[0]?.text).toContain(`Likely due ${addMonths(fleet[59]?.overhauledOn ?? '', 72)}`);
    const log = (await desk.call(reminderOperations.listLetters, { customerId })).body.rows;
    expect(log).toMatchObject([{ number: sentBy.body.letters[0]?.number, state: 'sent' }]);
    expect(await own()).toBeUndefined();
  });

  it('is found by its serial at once, and its whole history goes with it', async () => {
    const { rows } = (await desk.call(unitOperations.find, { text: 'TF002' })).body;
    expect(rows.filter(({ exact }) => exact)).toMatchObject([{ kind: 'unit', path: `/units/${jobs.b.unitId}` }]);
    const { body } = await desk.call(unitHistoryOperations.wholeUnitHistory, { itemId: jobs.b.unitId });
    expect(body.times.sinceNew.tenths).toBe(20_608 + 455);
    expect(body.parts.find(({ serial }) => serial === 'B1-TF001')).toMatchObject({ position: 'blade 2' });
    expect(body.directives).toMatchObject([{ number: 'D-2026-31', outcome: 'done' }]);
    expect(body.intervals.map(({ state, to }) => [state, to])).toEqual([
      ['stands', null],
      ['stands', day(0)],
      ['superseded', null],
    ]);
    expect(body.workOrders[0]?.signatures.length).toBeGreaterThan(0);
  });
});
