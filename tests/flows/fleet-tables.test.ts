// size: one customer's tables told in order; each step stands on the one before
import { meterOperations } from '@hubwright/contracts/customers/meter-operations';
import { customerOperations } from '@hubwright/contracts/customers/operations';
import { readingsOperations } from '@hubwright/contracts/customers/readings-operations';
import { fleetTableOperations as op } from '@hubwright/contracts/imports/fleet-operations';
import { importOperations } from '@hubwright/contracts/imports/operations';
import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { Reads } from '../../apps/server/src/platform/database/reads.ts';
import { readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { as } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';
import { sendTable, spreadsheet } from '../support/tables.ts';

describe('a customer’s fleet comes in by table', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let customers: { own: string; other: string };
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    desk = await as(shop, 'front-desk');
    const reads = readsOf(shop);
    const of = async (code: string) => (await reads.customer.findUniqueOrThrow({ where: { code } })).id;
    customers = { own: await of('OXLIP'), other: await of('BRACKEN') };
  }, 120_000);
  afterAll(() => shop.close());

  const head =
    'Reg,Type,Engine,Side,P/N,Serial no,Fitted on,Which meter,Tach at installation,TSN,TSO,Last overhaul,Hours now,Reading date';
  const row = (changes: Partial<Record<string, string>> = {}) => {
    const cells = {
      reg: 'ZZ-FT1',
      ...{ type: 'Heronby Pinnace', engine: 'Brindle B-360', side: '', model: 'Q3C-76', serial: 'FT 100' },
      ...{ on: '2025-01-10', meter: 'tach', meterThen: '1000.0', tsn: '2210.5', tso: '0.0', overhaul: '2024-12-01' },
      ...{ now: '1250.4', read: '2026-10-01' },
      ...changes,
    };
    return Object.values(cells).join(',');
  };
  const sent = async (lines: readonly string[], { kind = 'fleet', customerId = customers.own } = {}) => {
    const { status, body } = await sendTable(shop, desk, {
      ...{ kind, bytes: lines.join('\r\n'), path: `/api/customers/${customerId}/fleet-tables/${kind}` },
    });
    expect({ status, body }).toMatchObject({ status: 200 });
    return body.id;
  };
  const preview = async (importId: string, more: object = {}) =>
    (await desk.call(op.previewFleetTable, { importId, limit: 200, ...more } as never)).body;
  const apply = async (importId: string) =>
    desk.call(op.applyFleetTable, { importId, mapping: (await preview(importId)).mapping });
  const faults = async (lines: readonly string[], more: { kind?: string } = {}) => {
    const { rows } = await preview(await sent(lines, more));
    return rows.flatMap(({ line, errors }) => errors.map(({ field, detail }) => `${line} ${field}: ${detail}`));
  };
  const unit = async (serial: string) =>
    (await readsOf(shop).serializedItem.findFirstOrThrow({ where: { serial } })).id;
  const timesOf = async (serial: string, asOf?: string) =>
    (await desk.call(intervalOperations.itemTimes, { itemId: await unit(serial), ...(asOf ? { asOf } : {}) })).body;

  it('names what contradicts itself, at its cell, with what to do', async () => {
    const found = await faults([
      head,
      row(),
      row({ reg: 'ZZ-FT2', serial: 'FT 100' }),
      row({ reg: 'ZZ-FT3', model: 'Q3C76', serial: 'FT 102' }),
      row({ reg: 'ZZ-FT4', model: 'X-1', serial: 'FT 103' }),
      row({ reg: 'ZZ-FT5', serial: 'FT 104', tsn: '10', tso: '20.5' }),
      row({ reg: 'ZZ-FT6', serial: 'FT 105', on: day(3), read: day(4) }),
      row({ reg: 'ZZ-FT7', serial: 'FT 106', now: '900.0' }),
      row({ reg: 'ZZ-BMA', serial: 'FT 107' }),
      row({ reg: 'ZZ-FT8', serial: 'FT 108', type: '' }),
      row({ reg: 'ZZ-FT1', serial: 'FT 109' }),
      row({ reg: 'ZZ-FT9', serial: 'FT 110', tsn: '"1,250.4"', overhaul: '1.12.2024', meter: 'clock' }),
      row({ reg: 'ZZ-FTA', serial: 'FT 111', overhaul: '2025-02-01', read: '' }),
    ]);
    expect(found).toEqual([
      '3 serial: Line 2 names the same unit: take one of the two out',
      '4 model: There is no model Q3C76 on record: did you mean Q3C-76 of Quillon?',
      expect.stringMatching(/^5 model: There is no model X-1 on record: correct it/),
      '6 sinceOverhaul: More than its time since new: one of the two is wrong',
      `7 installedOn: ${day(3)} is still to come: correct the day`,
      `7 readOn: ${day(4)} is still to come: correct the day`,
      expect.stringMatching(/^8 reading: The meter would run backwards: 1000\.0 h on 2025-01-10/),
      expect.stringMatching(/^9 registration: ZZ-BMA is on record as an aircraft of Brackenmoor Air Charter/),
      '10 airframe: ZZ-FT8 is new here: say its airframe',
      '11 position: Line 2 has a propeller at the same position: correct one of the two',
      expect.stringMatching(/^12 meter: “clock” is none of/),
      expect.stringMatching(/^12 sinceNew: “1,250.4” are no hours in tenths/),
      '12 overhauledOn: “1.12.2024” is no date: write it as 2026-03-31',
      expect.stringMatching(/^13 overhauledOn: After it was installed on 2025-01-10/),
      '13 readOn: The current reading needs the day it was read on',
    ]);
  });

  it('is refused whole while a row is wrong, by whoever may not, and where the table is another’s', async () => {
    const importId = await sent([head, row(), row({ reg: 'ZZ-FT2', serial: 'FT 101', tso: '9000' })]);
    const { mapping, how } = await preview(importId);
    expect(how).toMatchObject({ registration: 'named', meterThen: 'named', readOn: 'named', serial: 'near' });
    const request = { operation: op.applyFleetTable, input: { importId, mapping } };
    const body = await expectRefused({ shop, visitor: desk }, request, { status: 409, type: 'rows-wrong' });
    expect(body).toMatchObject({ detail: '1 of 2 rows cannot be taken over' });
    const clerk = await as(shop, 'parts-room');
    expect((await clerk.call(op.applyFleetTable, request.input)).status).toBe(403);
    const manager = await as(shop, 'manager');
    expect((await manager.call(importOperations.previewImport, { importId })).status).toBe(404);
    expect((await manager.call(importOperations.applyImport, { importId, mapping })).status).toBe(404);
  });

  const fleet = [
    row(),
    row({
      reg: 'ZZ-FT2',
      serial: 'FT 101',
      meterThen: 'unknown',
      tsn: '',
      tso: '350.2',
      overhaul: 'unknown',
      now: '',
      read: '',
    }),
  ];

  it('is taken over whole; times at installation and what was flown since are summed', async () => {
    const importId = await sent([head, ...fleet]);
    expect((await preview(importId)).counts).toEqual({ new: 2, changed: 0, same: 0, wrong: 0 });
    expect((await apply(importId)).body).toMatchObject({ counts: { new: 2 } });
    // 2210.5 + (1250.4 − 1000.0) = 2460.9 since new; 0.0 + 250.4 = 250.4 since overhaul
    expect(await timesOf('FT 100')).toMatchObject({
      sinceNew: {
        tenths: 24_609,
        start: { date: '2025-01-10', tenths: 22_105, basis: 'declared in a table of its owner' },
      },
      sinceOverhaul: { tenths: 2_504 },
      doubts: [],
      where: { words: 'On ZZ-FT1 since 2025-01-10' },
    });
    const other = await timesOf('FT 101');
    expect(other).toMatchObject({
      sinceNew: { tenths: 'unknown' },
      sinceOverhaul: { tenths: 'unknown', atLeastTenths: 3_502 },
    });
    const kept = await shop.running.app.get(Reads).models.importedTable.findUniqueOrThrow({ where: { id: importId } });
    expect(kept).toMatchObject({ kind: 'fleet', customerId: customers.own, newRows: 2 });
    const { rows } = (await desk.call(op.listFleetTables, { customerId: customers.own })).body;
    expect(rows.map(({ kind, newRows }) => [kind, newRows])).toEqual([['fleet', 2]]);
    expect((await desk.call(importOperations.listImports, {})).body.rows).toEqual([]);
  });

  it('changes nothing the second time, and only what differs the third', async () => {
    const again = await sent([head, ...fleet]);
    const { counts, mapping } = await preview(again);
    expect(counts).toEqual({ new: 0, changed: 0, same: 2, wrong: 0 });
    const request = { operation: op.applyFleetTable, input: { importId: again, mapping } };
    const refused = await expectRefused({ shop, visitor: desk }, request, { status: 409, type: 'nothing-new' });
    expect(refused.detail).toBe('All 2 rows say what is on record already');
    const changed = await sent([
      head,
      row({ meterThen: '1010.0', tsn: '2200.5', now: '1300.4', read: '2026-11-01', type: 'Heronby Courser 4' }),
      fleet[1] ?? '',
    ]);
    const shown = await preview(changed);
    expect(
      shown.rows.map(({ verdict, changes }) => [verdict, changes.map((one) => `${one.field} ${one.from} ${one.to}`)]),
    ).toEqual([
      [
        'changed',
        [
          'airframe Heronby Pinnace Heronby Courser 4',
          'meterThen 1000.0 1010.0',
          'sinceNew 2210.5 2200.5',
          'reading  1300.4 on 2026-11-01',
        ],
      ],
      ['same', []],
    ]);
    expect((await apply(changed)).body).toMatchObject({ counts: { changed: 1, same: 1 } });
    // 2200.5 + (1300.4 − 1010.0) = 2490.9
    expect(await timesOf('FT 100')).toMatchObject({ sinceNew: { tenths: 24_909 }, doubts: [] });
    const intervals = (await desk.call(intervalOperations.aircraftIntervals, { itemId: await unit('FT 100') })).body
      .rows;
    expect(intervals.map(({ state, fromTenths }) => [state, fromTenths])).toEqual([
      ['stands', 10_100],
      ['superseded', 10_000],
    ]);
    expect(
      (
        await preview(
          await sent([
            head,
            row({ meterThen: '', tsn: '', tso: '', overhaul: '', now: '', read: '', type: '', engine: '' }),
          ]),
        )
      ).counts,
    ).toMatchObject({ same: 1 });
  });

  it('says where a unit or a position is taken, and what is in the shop', async () => {
    const job = await Job.arrived(shop, 'FT900', {});
    expect(job.id).toBeTruthy();
    const found = await faults([
      head,
      row({ reg: 'ZZ-FT2', serial: 'FT 100', side: 'left' }),
      row({ reg: 'ZZ-FT1', serial: 'FT 300', now: '', read: '' }),
      row({ reg: 'ZZ-FT3', serial: 'FT900' }),
      row({ reg: 'ZZ-FT4', serial: 'FT 301', type: 'Heronby Pinnace' }),
    ]);
    expect(found).toEqual([
      expect.stringMatching(
        /^2 serial: It is on record at single of ZZ-FT1 since 2025-01-10: record its removal there first/,
      ),
      expect.stringMatching(/^3 position: Q3C-76 FT 100 is on record there since 2025-01-10/),
      expect.stringMatching(/^4 serial: It is in the shop on WO-\d+ since /),
    ]);
  });

  it('reads columns a person chose once by itself the next time, for this customer only', async () => {
    const own = [
      'Plane,What it is,Motor,Prop,Number on hub,Since,Clock',
      'ZZ-FT5,Heronby Pinnace,Brindle B-360,Q3C-76,FT 500,2026-01-05,tach',
    ];
    const importId = await sent(own);
    expect((await preview(importId)).missing).toEqual(['registration', 'model', 'serial', 'installedOn', 'meter']);
    const chosen = { registration: 0, airframe: 1, engine: 2, model: 3, serial: 4, installedOn: 5, meter: 6 };
    expect((await desk.call(op.applyFleetTable, { importId, mapping: chosen })).status).toBe(200);
    const next = await sent(own);
    const shown = await preview(next);
    expect(shown).toMatchObject({
      mapping: chosen,
      how: { registration: 'remembered', meter: 'remembered' },
      counts: { same: 1 },
    });
    expect((await preview(await sent(own, { customerId: customers.other }))).missing).toHaveLength(5);
  });

  it('comes as a spreadsheet too', async () => {
    const bytes = spreadsheet([
      ['registration', 'airframe', 'engine', 'model', 'serial', 'installed on', 'meter', 'meter at installation'],
      [
        'ZZ-FT6',
        'Heronby Pinnace',
        'Brindle B-360',
        'Q3C-76',
        'FT 600',
        new Date(Date.UTC(2026, 1, 3)),
        'tachometer',
        12.1,
      ],
    ]);
    const { body } = await sendTable(shop, desk, {
      kind: 'fleet',
      bytes,
      path: `/api/customers/${customers.own}/fleet-tables/fleet`,
    });
    expect((await apply(body.id)).body).toMatchObject({ counts: { new: 1 } });
    const [row] = (await desk.call(intervalOperations.aircraftIntervals, { itemId: await unit('FT 600') })).body.rows;
    expect(row).toMatchObject({ from: '2026-02-03', fromTenths: 121, meter: 'tachometer' });
  });

  const readingsHead = 'registration,date,meter,hours,meter replaced on,old meter showed last,looked at again';

  it('readings come by table, each judged with the others', async () => {
    const found = await faults(
      [
        readingsHead,
        'ZZ-FT1,2026-11-10,tachometer,1290.0,,,',
        'ZZ-FT1,2026-11-11,tachometer,1310.0,,,',
        'ZZ-FT6,2026-11-10,tachometer,5.0,,,',
        'ZZ-FT6,2026-11-11,tachometer,20000.0,,,',
        'ZZ-NONE,2026-11-11,tachometer,1.0,,,',
        'ZZ-BMA,2026-11-11,tachometer,1.0,,,',
        'ZZ-FT5,2026-11-11,tachometer,unknown,,,',
      ],
      { kind: 'readings' },
    );
    expect(found).toEqual([
      expect.stringMatching(
        /^2 hours: The meter would run backwards: 1300\.4 h on 2026-11-01 \(a reading\), then 1290\.0 h/,
      ),
      expect.stringMatching(/^4 hours: The meter would run backwards: 12\.1 h on 2026-02-03 \(an installation\)/),
      expect.stringMatching(/^5 hours: .*24 hours a day/),
      expect.stringMatching(/^6 registration: There is no aircraft ZZ-NONE on record/),
      expect.stringMatching(/^7 registration: ZZ-BMA is on record as an aircraft of Brackenmoor/),
      '8 hours: A reading needs what the meter showed',
    ]);
    const good = [
      readingsHead,
      'ZZ-FT1,2026-11-11,tachometer,1310.0,,,',
      'ZZ-FT6,2026-11-10,tachometer,5.0,2026-06-01,80.1,',
      'ZZ-FT1,2026-11-01,tachometer,1300.4,,,',
    ];
    const importId = await sent(good, { kind: 'readings' });
    expect((await preview(importId)).counts).toEqual({ new: 2, changed: 0, same: 1, wrong: 0 });
    expect((await apply(importId)).body).toMatchObject({ counts: { new: 2, same: 1 } });
    // The old meter 12.1 … 80.1, the new one 0.0 … 5.0: 68.0 + 5.0
    expect((await timesOf('FT 600')).pieces.map(({ flownTenths }) => flownTenths)).toEqual([680, 50]);
    expect((await preview(await sent(good, { kind: 'readings' }))).counts).toMatchObject({ same: 3 });
  });

  it('readings typed for many aircraft are on record together or not at all', async () => {
    const aircraft = (await desk.call(customerOperations.listAircraft, { customerId: customers.own, limit: 200 })).body
      .rows;
    const id = (registration: string) => aircraft.find((one) => one.registration === registration)?.id ?? '';
    const meter = 'tachometer' as const;
    const [one, two] = [id('ZZ-FT1'), id('ZZ-FT6')];
    const input = (rows: object[]) =>
      ({ customerId: customers.own, readOn: day(0), basis: 'owner by telephone', rows }) as never;
    const refused = (rows: object[], expected: { status: number; type: string; pointer: string }) =>
      expectRefused(
        { shop, visitor: desk },
        { operation: readingsOperations.recordReadings, input: input(rows) },
        expected,
      );
    const good = { aircraftId: one, meter, hoursTenths: 13_200 };
    await refused([good, { aircraftId: two, meter, hoursTenths: 40 }], {
      ...{ status: 422, type: 'reading-out-of-line', pointer: '/rows/1/hoursTenths' },
    });
    // From 5.0 h on 10 November at thirteen hours a day: possible, but more than the twelve that are asked about.
    const days = Math.round((Date.parse(day(0)) - Date.parse('2026-11-10')) / 86_400_000);
    const fast = { aircraftId: two, meter, hoursTenths: 50 + 130 * Math.max(1, days) };
    await refused([good, fast], { status: 409, type: 'reading-unlikely', pointer: '/rows/1/sure' });
    const others = await readsOf(shop).aircraft.findUniqueOrThrow({ where: { registration: 'ZZ-BMA' } });
    await refused([{ ...good, aircraftId: others.id }], {
      ...{ status: 422, type: 'invalid-input', pointer: '/rows/0/aircraftId' },
    });
    const taken = await desk.call(readingsOperations.recordReadings, input([good, { ...fast, sure: true }]));
    expect(taken.body).toMatchObject({ recorded: 2, same: 0 });
    const twice = await desk.call(readingsOperations.recordReadings, input([good]));
    expect(twice.body).toMatchObject({ recorded: 0, same: 1 });
    const three = id('ZZ-FT5');
    const replaced = { aircraftId: three, meter, hoursTenths: 12, replaced: { on: day(-1), oldTenths: 13_201 } };
    expect((await desk.call(readingsOperations.recordReadings, input([replaced]))).body).toMatchObject({ recorded: 1 });
    const meters = (await desk.call(meterOperations.metersOfAircraft, { aircraftId: three })).body;
    expect(meters.changes).toMatchObject([
      { changedOn: day(-1), oldTenths: 13_201, newTenths: 0, basis: 'owner by telephone' },
    ]);
  });

  it('is found by one serial at once', async () => {
    const { rows } = (await desk.call(unitOperations.find, { text: 'ft 600' })).body;
    expect(rows).toMatchObject([{ kind: 'unit', title: 'FT 600', exact: true }]);
  });
});
