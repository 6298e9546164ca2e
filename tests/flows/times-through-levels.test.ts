// size: one story of one propeller told in order; each step stands on the one before
import { customerOperations } from '@hubwright/contracts/customers/operations';
import { ownerOperations } from '@hubwright/contracts/customers/owner-operations';
import { readingsOperations } from '@hubwright/contracts/customers/readings-operations';
import { dueDateOperations as due } from '@hubwright/contracts/due-dates/operations';
import { fleetTableOperations } from '@hubwright/contracts/imports/fleet-operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { assemblyOperations } from '@hubwright/contracts/units/assembly-operations';
import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { unitHistoryOperations } from '@hubwright/contracts/units/unit-history-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import pg from 'pg';
import { KeptDue } from '../../apps/server/src/modules/due-dates/public.ts';
import { receiveUnit } from '../../apps/server/src/modules/work-orders/receive-unit.command.ts';
import { type Arrival, readsOf, threeBlade } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';
import { sendTable } from '../support/tables.ts';

/*
 * A propeller, its blades and a clamp of blade 1, all with times of their own. Hours in tenths.
 *
 *   on ZZ-BMD, tachometer 2840.1 … reading 2990.1 ten days ago       150.0 h
 *              landings   1000   … reading 1480   ten days ago       480 cycles
 *   unit    declared 1000.0 h, 500 cycles    → 1150.0 h, 980 cycles
 *   blade   declared  500.0 h, 200 cycles    →  650.0 h, 680 cycles
 *   clamp   declared  100.0 h, 100 cycles    →  250.0 h, 580 cycles
 *   use of cycles: 1300 a hundred days ago, 1480 ten days ago: 180 in 90 days, 2 a day
 */
describe('times through every level, in hours and in cycles', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let inspector: Visitor;
  let unitId: string;
  let ids: { blade: string; clamp: string; aircraft: string; owner: string; other: string };
  const sql = async <Row extends pg.QueryResultRow>(text: string, values: unknown[] = []) => {
    const client = new pg.Client({ connectionString: shop.databaseUrl });
    await client.connect();
    return (await client.query<Row>(text, values).finally(() => client.end())).rows;
  };
  const timesOf = async (itemId: string, asOf?: string) =>
    (await desk.call(intervalOperations.itemTimes, { itemId, ...(asOf ? { asOf } : {}) })).body;
  const totals = async (itemId: string, asOf?: string) => {
    const { sinceNew, cyclesSinceNew } = await timesOf(itemId, asOf);
    return [sinceNew.tenths, cyclesSinceNew.cycles];
  };
  const answer = async () => (await desk.call(due.nextDue, { unitId })).body;
  const listed = async (customerId: string) =>
    (await desk.call(due.comingDue, { days: 3660, limit: 200, customerId } as never)).body.rows.find(
      ({ unit }) => unit.id === unitId,
    );
  const limited = async (partNumber: string, cycles: number) => {
    await sql(
      `INSERT INTO life_limits (id, revision_id, model_id, part_number, cycles)
       SELECT gen_random_uuid(), r.id, m.id, $2, $3 FROM serialized_items u JOIN unit_models m ON m.id = u.model_id
       JOIN manual_revisions r ON r.manual_id = m.manual_id AND r.state = 'current' WHERE u.id = $1
       ON CONFLICT (revision_id, model_id, part_number) DO UPDATE SET cycles = excluded.cycles, hours_tenths = NULL`,
      [unitId, partNumber, cycles],
    );
    await shop.running.app.get(KeptDue).whole();
  };
  const lifeOf = async (name: string) =>
    (await answer()).others.find(({ kind, what }) => kind === 'life' && what.startsWith(`life limit of ${name}`));
  const clamp = {
    kind: 'clamp' as const,
    ...{ position: 'clamp', maker: 'Quillon', partNumber: 'Q76-CL', serial: 'CL-1' },
    ...{ sinceNewTenths: 1_000, sinceNewCycles: 100, basis: 'seen at teardown' },
  };

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [desk, inspector] = [await as(shop, 'front-desk'), await as(shop, 'inspector')];
    const arrival = await threeBlade(shop, 'QL100');
    const input: Arrival = {
      ...arrival,
      receivedOn: day(-300),
      times: { sinceNewTenths: 10_000, sinceOverhaulTenths: 'unknown', sinceNewCycles: 500, meter: 'tachometer' },
      parts: arrival.parts.map((part) =>
        part.kind === 'blade' ? { ...part, sinceNewTenths: 5_000, sinceNewCycles: 200 } : part,
      ),
    };
    const order = await shop.run(receiveUnit, input, await actorOf(shop, 'front-desk'));
    await sql("UPDATE work_orders SET stage = 'closed', shipped_at = $2, closed_at = $2 WHERE id = $1", [
      order.id,
      `${day(-290)}T18:00:00Z`,
    ]);
    const item = (serial: string) => readsOf(shop).serializedItem.findFirstOrThrow({ where: { serial } });
    unitId = (await item('QL100')).id;
    const customer = async (code: string) => (await readsOf(shop).customer.findUniqueOrThrow({ where: { code } })).id;
    ids = {
      ...{ blade: (await item('B1-QL100')).id, clamp: '' },
      aircraft: (await readsOf(shop).aircraft.findUniqueOrThrow({ where: { registration: 'ZZ-BMD' } })).id,
      ...{ owner: await customer('BRACKEN'), other: await customer('OXLIP') },
    };
  }, 120_000);
  afterAll(() => shop.close());

  it('a part of a part goes on record with what it sits in, once and in one place', async () => {
    const fit = { ...clamp, parentId: ids.blade, from: day(-295) };
    const operation = assemblyOperations.fitWithin;
    await expectRefused(
      { shop, visitor: inspector },
      { operation, input: { ...fit, parentId: unitId } },
      { status: 422, type: 'invalid-input', pointer: '/parentId' },
    );
    const { body } = await inspector.call(operation, fit);
    expect(body).toHaveProperty('id');
    ids = { ...ids, clamp: String(body.id) };
    const into = {
      ...fit,
      parentId: ids.clamp,
      kind: 'blade' as const,
      partNumber: 'Q76-B',
      serial: 'B1-QL100',
    };
    await inspector.call(assemblyOperations.fitWithin, into).then(({ status, body: problem }) => {
      expect({ status, type: problem.type }).toEqual({ status: 409, type: '/problems/installed-elsewhere' });
    });
    await expectRefused(
      { shop, visitor: inspector },
      { operation, input: { ...fit, serial: 'CL-2' } },
      { status: 409, type: 'position-taken' },
    );
    await expectRefused(
      { shop, visitor: inspector },
      { operation, input: { ...fit, position: 'other side' } },
      { status: 409, type: 'installed-elsewhere' },
    );
  });

  it('readings carry cycles beside hours, one by one, in a batch and in a table', async () => {
    const on = { aircraftId: ids.aircraft, position: 'single', meter: 'tachometer', basis: 'owner' } as const;
    const cycles = { meter: 'landings', from: 1_000 } as const;
    const installed = { ...on, itemId: unitId, from: day(-280), fromTenths: 28_401, cycles };
    expect((await desk.call(intervalOperations.reportInstalled, installed)).body).toHaveProperty('id');
    const single = { aircraftId: ids.aircraft, readOn: day(-100) };
    await expectRefused(
      { shop, visitor: desk },
      { operation: customerOperations.recordReading, input: { ...single, meter: 'landings', hoursTenths: 1_300 } },
      { status: 422, type: 'invalid-input', pointer: '/cycles' },
    );
    await expectRefused(
      { shop, visitor: desk },
      { operation: customerOperations.recordReading, input: { ...single, meter: 'landings', cycles: 999 } },
      { status: 422, type: 'reading-out-of-line', pointer: '/cycles' },
    );
    const table = ['Reg,Date,Meter,Landings', `ZZ-BMD,${day(-100)},ldg,1300`];
    const { body: staged } = await sendTable(shop, desk, {
      ...{ kind: 'readings', bytes: table.join('\r\n'), path: `/api/customers/${ids.owner}/fleet-tables/readings` },
    });
    const importId = String(staged.id);
    const { mapping, rows } = (
      await desk.call(fleetTableOperations.previewFleetTable, { importId, limit: 10 } as never)
    ).body;
    expect(rows.map(({ errors }) => errors)).toEqual([[]]);
    expect((await desk.call(fleetTableOperations.applyFleetTable, { importId, mapping })).status).toBe(200);
    const batch = {
      ...{ customerId: ids.owner, readOn: day(-10), basis: 'by telephone' },
      rows: [
        { aircraftId: ids.aircraft, meter: 'tachometer' as const, hoursTenths: 29_901 },
        { aircraftId: ids.aircraft, meter: 'landings' as const, cycles: 1_480 },
      ],
    };
    expect((await desk.call(readingsOperations.recordReadings, batch)).body).toMatchObject({ recorded: 2 });
    const { aircraft } = (await desk.call(customerOperations.showCustomer, { customerId: ids.owner })).body;
    expect(aircraft.find(({ id }) => id === ids.aircraft)?.latestReadings).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ meter: 'landings', cycles: 1_480, hoursTenths: null }),
        expect.objectContaining({ meter: 'tachometer', cycles: null, hoursTenths: 29_901 }),
      ]),
    );
  });

  it('every total is the one added up by hand, on its own page and in the tree of the unit', async () => {
    expect(await totals(unitId)).toEqual([11_500, 980]);
    expect(await totals(ids.blade)).toEqual([6_500, 680]);
    expect(await totals(ids.clamp)).toEqual([2_500, 580]);
    expect(await totals(ids.clamp, day(-100))).toEqual([1_000, 400]);
    const [piece] = (await timesOf(ids.clamp)).pieces.filter(({ meterNo }) => meterNo > 0);
    expect(piece?.within.map(({ position, name }) => `${position} of ${name}`)).toEqual([
      'clamp of Q76-B B1-QL100',
      'blade 1 of Q3C-76 QL100',
    ]);
    expect((await timesOf(ids.clamp)).where.words).toContain('At clamp of Q76-B B1-QL100, which is at blade 1 of');
    const { parts } = (await desk.call(unitOperations.unitHistory, { itemId: unitId })).body;
    expect(parts.find(({ id }) => id === ids.clamp)).toMatchObject({
      ...{ position: 'clamp of blade 1', level: 2, parentId: ids.blade },
      times: {
        ...{ sinceNew: { tenths: 2_500 }, cyclesSinceNew: { cycles: 580 }, countedThrough: day(-10), asOf: day(0) },
        restsOn: expect.stringContaining('from 100.0 h'),
      },
    });
    const { body: whole } = await desk.call(unitHistoryOperations.wholeUnitHistory, { itemId: unitId });
    expect(whole.parts.find(({ id }) => id === ids.blade)?.times).toMatchObject({ sinceNew: { tenths: 6_500 } });
    expect(whole.readings).toContainEqual(expect.objectContaining({ meter: 'landings', cycles: 1_480 }));
  });

  it('a paper that says less than was flown by now is refused, though it says more than the last paper', async () => {
    const { body: blade } = await desk.call(unitOperations.unitHistory, { itemId: ids.blade });
    const said = { itemId: ids.blade, sinceOverhaulTenths: 'unknown', basis: 'card', signature: pin } as const;
    const operation = unitOperations.establishTimes;
    await expectRefused(
      { shop, visitor: inspector },
      { operation, input: { ...said, sinceNewTenths: 6_400 }, options: { version: blade.version } },
      { status: 422, type: 'hours-wrong', pointer: '/sinceNewTenths' },
    );
    await expectRefused(
      { shop, visitor: inspector },
      {
        operation,
        input: { ...said, sinceNewTenths: 6_500, sinceNewCycles: 679 },
        options: { version: blade.version },
      },
      { status: 422, type: 'hours-wrong', pointer: '/sinceNewCycles' },
    );
  });

  it('a life in cycles comes due by the use of cycles, at every level, and never later when it is tightened', async () => {
    await limited('Q76-B', 800);
    expect(await lifeOf('blade 1')).toMatchObject({ dueOn: day(50) });
    expect((await lifeOf('blade 1'))?.says).toMatch(/800 cycles, of which 680 cycles were used.*2\.00 cycles a day/);
    expect(await answer()).toMatchObject({ governedBy: 'life', dueOn: day(50), overdue: false });
    expect(await listed(ids.owner)).toMatchObject({ governedBy: 'life', dueOn: day(50) });
    await limited('Q76-B', 750);
    expect(await listed(ids.owner)).toMatchObject({ dueOn: day(25) });
    const pairs = fc.tuple(fc.integer({ min: 600, max: 3_000 }), fc.integer({ min: 0, max: 500 }));
    await fc.assert(
      fc.asyncProperty(pairs, async ([tighter, more]) => {
        await limited('Q76-B', tighter + more);
        const later = (await listed(ids.owner))?.dueOn ?? '';
        await limited('Q76-B', tighter);
        expect(String((await listed(ids.owner))?.dueOn) <= later).toBe(true);
      }),
      { numRuns: 6 },
    );
    await limited('Q76-B', 750);
    await limited('Q76-CL', 620);
    expect(await lifeOf('clamp of blade 1')).toMatchObject({ dueOn: day(10) });
    expect((await listed(ids.owner))?.governedWhat).toContain('clamp of blade 1 Q76-CL serial CL-1');
    await limited('Q76-CL', 580);
    expect(await lifeOf('clamp of blade 1')).toMatchObject({ dueOn: day(-10) });
    expect(await listed(ids.owner)).toMatchObject({ dueOn: day(-10), overdue: true });
  });

  it('what nobody read is unknown with a lower bound, and a life that the bound reaches is used up', async () => {
    const [row] = (await desk.call(intervalOperations.aircraftIntervals, { itemId: unitId })).body.rows;
    if (!row) throw new Error('nothing is on record');
    const { aircraft, position, from, fromTenths, intervalId } = row;
    const stated = { aircraftId: aircraft.id, position, meter: 'tachometer' as const, from, fromTenths, intervalId };
    const unread = { meter: 'landings' as const, from: 'unknown' as const };
    const correction = { ...stated, cycles: unread, supersedesId: row.id, reason: 'the landings were guessed' };
    expect((await desk.call(intervalOperations.correctInterval, correction)).status).toBe(200);
    const counted = (await timesOf(ids.clamp)).cyclesSinceNew;
    expect(counted).toMatchObject({ cycles: 'unknown', atLeast: 100 + 180 });
    expect((await lifeOf('clamp of blade 1'))?.says).toContain('of which at least 280 cycles were used');
    await limited('Q76-CL', 280);
    expect(await lifeOf('clamp of blade 1')).toMatchObject({ dueOn: day(-10) });
  });

  it('an aircraft changes hands: its units come due with the new owner, and both pages say it', async () => {
    const move = {
      ...{ aircraftId: ids.aircraft, fromCustomerId: ids.owner, customerId: ids.other },
      ...{ on: day(-3), basis: 'bill of sale' },
    };
    const operation = ownerOperations.moveAircraft;
    const refused = (input: Record<string, unknown>, refusal: { status: number; type: string; pointer?: string }) =>
      expectRefused({ shop, visitor: desk }, { operation, input: { ...move, ...input } }, refusal);
    await refused({ on: day(1) }, { status: 422, type: 'reading-out-of-line', pointer: '/on' });
    await refused({ customerId: ids.owner }, { status: 409, type: 'owner-changed' });
    await refused({ fromCustomerId: ids.other }, { status: 409, type: 'owner-changed' });
    expect((await desk.call(operation, move)).status).toBe(200);
    expect(await listed(ids.owner)).toBeUndefined();
    expect(await listed(ids.other)).toMatchObject({ registration: 'ZZ-BMD', customer: { id: ids.other } });
    for (const customerId of [ids.owner, ids.other]) {
      const { rows } = (await desk.call(ownerOperations.aircraftMoves, { customerId })).body;
      expect(rows).toMatchObject([
        { from: { id: ids.owner }, to: { id: ids.other }, on: day(-3), basis: 'bill of sale' },
      ]);
    }
    const back = { fromCustomerId: ids.other, customerId: ids.owner };
    await refused({ ...back, on: day(-4) }, { status: 409, type: 'owner-changed', pointer: '/on' });
    const { workOrders } = (await desk.call(unitOperations.unitHistory, { itemId: unitId })).body;
    expect(workOrders).toHaveLength(1);
  });

  it('back in the shop, a release asks by what was flown and not by the last paper', async () => {
    await limited('Q76-B', 670);
    const job = await Job.arrived(shop, 'QL100', {
      ...{ customerId: ids.other, aircraftId: ids.aircraft },
      times: { sinceNewTenths: 11_500, sinceOverhaulTenths: 'unknown', sinceNewCycles: 980, meter: 'tachometer' },
    });
    const { open } = (await inspector.call(releaseOperations.releaseChecklist, { workOrderId: job.id })).body;
    const life = open.filter(({ kind }) => kind === 'life-limit').map(({ what }) => what);
    // 200 declared and 180 flown between readings at least: nobody read the landings at its installation.
    expect(life).toContainEqual(expect.stringContaining('blade 1, Q76-B serial B1-QL100: limited to 670 cycles'));
    expect(life).toContainEqual(
      expect.stringContaining('clamp of blade 1, Q76-CL serial CL-1: its life limit of 280 cycles is reached'),
    );
  });

  it('a part leaves the part it sits in on a day, and goes into nothing that sits in it', async () => {
    const refused = (input: Record<string, unknown>, refusal: { status: number; type: string; pointer?: string }) =>
      expectRefused({ shop, visitor: inspector }, { operation: assemblyOperations.takeOutOf, input }, refusal);
    const out = { itemId: ids.clamp, on: day(0), basis: 'taken apart for inspection' };
    await refused({ ...out, itemId: ids.blade }, { status: 422, type: 'invalid-input', pointer: '/itemId' });
    await refused({ ...out, on: day(-296) }, { status: 422, type: 'invalid-input', pointer: '/on' });
    await refused({ ...out, on: day(2) }, { status: 422, type: 'reading-out-of-line', pointer: '/on' });
    const pinned = { ...clamp, position: 'pin', partNumber: 'Q76-PN', serial: 'PN-1' };
    const held = await inspector.call(assemblyOperations.fitWithin, { ...pinned, parentId: ids.clamp, from: day(0) });
    expect(held.body).toHaveProperty('id');
    expect((await inspector.call(assemblyOperations.takeOutOf, out)).status).toBe(200);
    await refused(out, { status: 404, type: 'not-found' });
    expect((await timesOf(ids.clamp)).where.words).toBe('In no unit on record');
    await expectRefused(
      { shop, visitor: inspector },
      {
        operation: assemblyOperations.fitWithin,
        input: { ...clamp, parentId: String(held.body.id), position: 'pin', from: day(0) },
      },
      { status: 422, type: 'invalid-input', pointer: '/parentId' },
    );
  });
});
