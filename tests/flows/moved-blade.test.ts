import { meterOperations } from '@hubwright/contracts/customers/meter-operations';
import { customerOperations } from '@hubwright/contracts/customers/operations';
import { findingOperations } from '@hubwright/contracts/findings/operations';
import { intervalOperations as op } from '@hubwright/contracts/units/interval-operations';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { receiveUnit } from '../../apps/server/src/modules/work-orders/receive-unit.command.ts';
import { returnUnrepaired } from '../../apps/server/src/modules/work-orders/return-unrepaired.command.ts';
import { type Arrival, readsOf, threeBlade } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

/*
 * Two propellers of one owner, A and B, both known to the shop. Hours in tenths; the blade moved is "blade 1" of A.
 *
 *   A   declared                       2100.4 since new
 *       on ZZ-BMD, tachometer 2840.1 … 3000.0, meter replaced, 0.0 … 80.0       159.9 + 80.0 = 239.9
 *       → 2340.3
 *   B   declared                       1000.0 since new
 *       on ZZ-BMA, hour meter 100.0 … 220.0                                             120.0
 *       after the move on ZZ-BMA, hour meter 300.0 … reading 345.5                        45.5
 *       → 1120.0 when it came, 1165.5 at the end
 *   blade: declared 500.0 + 239.9 on A + 45.5 on B = 785.4
 *   the blade it replaced: declared 800.0 + 120.0 on B = 920.0, and no hour more
 */
describe('a blade moves from one propeller to another through a work order', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let desk: Visitor;
  let jobs: { a: Job; b: Job };
  let aircraft: { a: string; b: string };
  const sql = async (text: string, values: unknown[]) => {
    const client = new pg.Client({ connectionString: shop.databaseUrl });
    await client.connect();
    await client.query(text, values).finally(() => client.end());
  };
  const left = (id: string, on: string) =>
    sql("UPDATE work_orders SET stage = 'closed', shipped_at = $2, closed_at = $2 WHERE id = $1", [
      id,
      `${on}T18:00:00Z`,
    ]);
  const item = (serial: string) => readsOf(shop).serializedItem.findFirstOrThrow({ where: { serial } });
  const timesOf = async (serial: string, asOf?: string) =>
    (await desk.call(op.itemTimes, { itemId: (await item(serial)).id, ...(asOf ? { asOf } : {}) })).body;
  const sinceNew = async (serial: string, asOf?: string) => (await timesOf(serial, asOf)).sinceNew.tenths;

  /** Came years ago, left again, flew; each blade with times of its own. */
  const earlier = async (
    serial: string,
    declared: { unit: number; blade: number },
    days: { on: number; left: number },
  ) => {
    const arrival = await threeBlade(shop, serial);
    const people = await actorOf(shop, 'front-desk');
    const input: Arrival = {
      ...arrival,
      receivedOn: day(days.on),
      times: { sinceNewTenths: declared.unit, sinceOverhaulTenths: 'unknown', meter: 'tachometer' },
      parts: arrival.parts.map((part) =>
        part.kind === 'blade' ? { ...part, sinceNewTenths: declared.blade, sinceOverhaulTenths: 'unknown' } : part,
      ),
    };
    const { id } = await shop.run(receiveUnit, input, people);
    await left(id, day(days.left));
  };
  const again = (serial: string, changes: Partial<Arrival>) => Job.arrived(shop, serial, changes);

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    desk = await as(shop, 'front-desk');
    await earlier('QM100', { unit: 21_004, blade: 5_000 }, { on: -400, left: -390 });
    await earlier('QM200', { unit: 10_000, blade: 8_000 }, { on: -395, left: -385 });
    const reads = readsOf(shop);
    const plane = (registration: string) => reads.aircraft.findUniqueOrThrow({ where: { registration } });
    aircraft = { a: (await plane('ZZ-BMD')).id, b: (await plane('ZZ-BMA')).id };
    const units = await reads.serializedItem.findMany({ where: { serial: { in: ['QM100', 'QM200'] } } });
    const unit = (serial: string) => units.find((one) => one.serial === serial)?.id ?? '';
    const basis = 'owner by telephone';
    const on = async (serial: string, at: object) =>
      (await desk.call(op.reportInstalled, { itemId: unit(serial), basis, ...at } as never)).body;
    const single = { aircraftId: aircraft.a, position: 'single', meter: 'tachometer' };
    expect(await on('QM100', { ...single, from: day(-380), fromTenths: 28_401 })).toHaveProperty('id');
    const twin = { aircraftId: aircraft.b, position: 'left', meter: 'hour-meter' };
    expect(await on('QM200', { ...twin, from: day(-370), fromTenths: 1_000 })).toHaveProperty('id');
  }, 120_000);
  afterAll(() => shop.close());

  it('says what is wrong with a lower reading, and takes it once the meter was replaced', async () => {
    const reading = { aircraftId: aircraft.a, meter: 'tachometer' as const, readOn: day(-100), hoursTenths: 500 };
    const request = { operation: customerOperations.recordReading, input: reading };
    const refused = await expectRefused({ shop, visitor: desk }, request, {
      ...{ status: 422, type: 'reading-out-of-line', pointer: '/hoursTenths' },
    });
    expect(refused.detail).toContain('2840.1 h');
    expect(refused.detail).toContain('an installation');
    const change = {
      aircraftId: aircraft.a,
      meter: 'tachometer' as const,
      changedOn: day(-200),
      basis: 'log entry 88',
    };
    const operation = meterOperations.recordMeterChange;
    await expectRefused(
      { shop, visitor: desk },
      { operation, input: { ...change, oldTenths: 28_000, newTenths: 0 } },
      { status: 422, type: 'reading-out-of-line', pointer: '/oldTenths' },
    );
    expect((await desk.call(operation, { ...change, oldTenths: 30_000, newTenths: 0 })).status).toBe(200);
    expect((await desk.call(customerOperations.recordReading, reading)).status).toBe(200);
    // 2100.4 + (3000.0 − 2840.1) + 50.0
    expect(await sinceNew('QM100', day(-100))).toBe(21_004 + 1_599 + 500);
    expect(await sinceNew('QM100', day(-150))).toBe(21_004 + 1_599);
  });

  it('marks a wrong reading as a mistake, and counts it for nothing', async () => {
    const wrong = { aircraftId: aircraft.a, meter: 'tachometer' as const, readOn: day(-90), hoursTenths: 1_500 };
    const { id } = (await desk.call(customerOperations.recordReading, wrong)).body;
    expect(await sinceNew('QM100', day(-60))).toBe(21_004 + 1_599 + 1_500);
    const strike = {
      operation: meterOperations.strikeReading,
      input: { readingId: id, reason: 'read off another aircraft' },
    };
    expect((await desk.call(strike.operation, strike.input)).status).toBe(200);
    expect(await sinceNew('QM100', day(-60))).toBe(21_004 + 1_599 + 500);
    await expectRefused({ shop, visitor: desk }, strike, { status: 409, type: 'reading-struck' });
    const meters = (await desk.call(meterOperations.metersOfAircraft, { aircraftId: aircraft.a })).body;
    expect(meters.readings.find((one) => one.id === id)?.struckBecause).toBe('read off another aircraft');
  });

  it('refuses a unit in two places, two units in one place, and days to come', async () => {
    const itemId = (await item('QM100')).id;
    const other = {
      itemId,
      aircraftId: aircraft.b,
      position: 'right' as const,
      meter: 'hour-meter' as const,
      basis: 'a slip',
    };
    const refused = (input: object, expected: { status: number; type: string; pointer?: string }) =>
      expectRefused(
        { shop, visitor: desk },
        { operation: op.reportInstalled, input: { ...other, ...input } as never },
        expected,
      );
    await refused({ from: day(-50), fromTenths: 'unknown' }, { status: 409, type: 'installed-elsewhere' });
    await refused(
      { from: day(-395), fromTenths: 'unknown', to: day(-392), toTenths: 'unknown' },
      { status: 409, type: 'installed-elsewhere' },
    );
    await refused(
      { from: day(4), fromTenths: 'unknown' },
      { status: 422, type: 'reading-out-of-line', pointer: '/from' },
    );
    await refused(
      { position: 'left', from: day(-385), fromTenths: 'unknown', to: day(-369), toTenths: 'unknown' },
      { status: 409, type: 'installed-elsewhere' },
    );
    await refused(
      { from: day(-389), fromTenths: 'unknown', to: day(-388) },
      { status: 422, type: 'invalid-input', pointer: '/toTenths' },
    );
  });

  it('ends the interval on the day a unit comes in, with the meter as it came', async () => {
    const b = await again('QM200', {
      times: { sinceNewTenths: 11_200, sinceOverhaulTenths: 'unknown', meter: 'hour-meter', meterTenths: 2_200 },
    });
    const a = await again('QM100', {
      times: { sinceNewTenths: 22_000, sinceOverhaulTenths: 'unknown', meter: 'tachometer', meterTenths: 800 },
    });
    jobs = { a, b };
    const rows = (await desk.call(op.aircraftIntervals, { itemId: a.unitId })).body.rows;
    expect(rows.map(({ state, to, toTenths }) => [state, to, toTenths])).toEqual([
      ['stands', day(0), 800],
      ['superseded', null, null],
    ]);
    const times = await timesOf('QM100');
    expect(times).toMatchObject({
      sinceNew: { tenths: 23_403 },
      sinceOverhaul: { tenths: 'unknown', atLeastTenths: 2_399 },
    });
    expect(times.where).toEqual({ words: `In the shop on ${a.number}`, path: `/work-orders/${a.id}` });
    expect(times.doubts).toEqual([
      expect.stringContaining('2200.0 h since new (declared on receipt); what is on record makes it 2340.3 h'),
    ]);
    expect((await timesOf('QM200')).doubts).toEqual([]);
    expect([await sinceNew('QM200'), await sinceNew('B1-QM100'), await sinceNew('B2-QM200')]).toEqual([
      11_200, 7_399, 9_200,
    ]);
  });

  it('moves only out of a unit that goes through no release', async () => {
    const { a, b } = jobs;
    await b.tornDown();
    await a.inWork();
    const [technician, inspector] = [await as(shop, 'technician'), await as(shop, 'inspector')];
    const traveler = await b.reads.traveler.findFirstOrThrow({ where: { workOrderId: b.id, position: 'blade 2' } });
    const { id: findingId } = (
      await technician.call(findingOperations.raiseFinding, {
        ...{ travelerId: traveler.id, area: 'leading-edge', damage: 'nicked', place: '20 in', description: 'too deep' },
      } as never)
    ).body;
    const { version } = (await inspector.call(findingOperations.finding, { findingId })).body;
    const reject = { findingId, disposition: 'reject', signature: pin };
    expect((await inspector.call(findingOperations.disposeFinding, reject as never, { version })).status).toBe(200);
    const input = {
      ...{ findingId, maker: 'Quillon', partNumber: 'Q76-B', serial: 'B1-QM100' },
      ...{ sinceNewTenths: 'unknown' as const, sinceOverhaulTenths: 'unknown' as const },
    };
    const moved = { operation: findingOperations.fitReplacement, input };
    await expectRefused({ shop, visitor: technician }, moved, { status: 409, type: 'already-in-shop' });
    const back = {
      workOrderId: a.id,
      decidedByName: 'Alder Brackenmoor',
      reason: 'not worth it; blade 1 goes to QM200',
    };
    await shop.run(returnUnrepaired, back, a.people.desk, { version: (await a.workOrder()).version });
    expect((await technician.call(moved.operation, input)).status).toBe(200);
    expect((await timesOf('B1-QM100')).where.words).toBe(
      `At blade 2 of Q3C-76 QM200, which is in the shop on ${b.number}`,
    );
    // The order's page tells what it has flown by now, not what its last paper said: 500.0 + 239.9.
    const { parts } = (await desk.call(workOrderOperations.workOrder, { workOrderId: b.id })).body;
    expect(parts.find(({ serial }) => serial === 'B1-QM100')?.times).toMatchObject({
      sinceNewTenths: 7_399,
      sinceOverhaulTenths: 'unknown',
    });
  }, 60_000);

  it('keeps its own time on both, and every total is the one added up by hand', async () => {
    const { a, b } = jobs;
    await left(b.id, day(0));
    await left(a.id, day(0));
    clock.seconds = 60 * 86_400;
    desk = await as(shop, 'front-desk');
    expect(await timesOf('QM200')).toMatchObject({ sinceNew: { tenths: 'unknown', atLeastTenths: 11_200 } });
    expect((await timesOf('QM200')).unknown.join(' ')).toContain('Nobody reported whether and where it flew');
    const twin = {
      aircraftId: aircraft.b,
      position: 'left' as const,
      meter: 'hour-meter' as const,
      basis: 'log entry 131',
    };
    await desk.call(op.reportInstalled, { ...twin, itemId: b.unitId, from: day(5), fromTenths: 3_000 });
    const reading = { aircraftId: aircraft.b, meter: 'hour-meter' as const, readOn: day(50), hoursTenths: 3_455 };
    expect((await desk.call(customerOperations.recordReading, reading)).status).toBe(200);
    const blade = await timesOf('B1-QM100');
    expect(blade.sinceNew).toMatchObject({ tenths: 7_854, start: { date: day(-400), tenths: 5_000 } });
    expect(blade.pieces.map(({ within, flownTenths }) => [within[0]?.name, flownTenths])).toEqual([
      ['Q3C-76 QM100', 1_599],
      ['Q3C-76 QM100', 800],
      ['Q3C-76 QM200', 455],
    ]);
    expect(await sinceNew('QM200')).toBe(11_655);
    expect(await sinceNew('B2-QM200')).toBe(9_200);
    expect(await sinceNew('QM100', day(-1))).toBe(21_004 + 1_599 + 500);
    expect(await sinceNew('B2-QM100')).toBe('unknown');
  });

  it('is corrected by superseding, never edited, and withdrawn with a reason', async () => {
    const { b } = jobs;
    const rows = async () => (await desk.call(op.aircraftIntervals, { itemId: b.unitId })).body.rows;
    const [row] = await rows();
    if (!row) throw new Error('nothing is on record');
    const right = {
      intervalId: row.intervalId,
      supersedesId: row.id,
      aircraftId: aircraft.b,
      position: 'left' as const,
    };
    const figures = { meter: 'hour-meter' as const, from: day(5), fromTenths: 3_100, reason: 'misheard: 310.0' };
    expect((await desk.call(op.correctInterval, { ...right, ...figures })).status).toBe(200);
    expect(await sinceNew('B1-QM100')).toBe(7_754);
    const stale = {
      operation: op.withdrawInterval,
      input: { intervalId: row.intervalId, supersedesId: row.id, reason: 'stale' },
    };
    await expectRefused({ shop, visitor: desk }, stale, { status: 409, type: 'interval-superseded' });
    const newest = (await rows()).find(({ state, intervalId }) => state === 'stands' && intervalId === row.intervalId);
    await desk.call(op.withdrawInterval, { ...stale.input, supersedesId: newest?.id ?? '', reason: 'another unit' });
    expect(await timesOf('B1-QM100')).toMatchObject({ sinceNew: { tenths: 'unknown', atLeastTenths: 7_399 } });
    await expect(sql('UPDATE aircraft_intervals SET from_tenths = 0', [])).rejects.toThrow();
  });
});
