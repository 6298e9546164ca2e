import { meterOperations } from '@hubwright/contracts/customers/meter-operations';
import { customerOperations } from '@hubwright/contracts/customers/operations';
import { dueDateOperations as due } from '@hubwright/contracts/due-dates/operations';
import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import pg from 'pg';
import { type DueRow, dueSql } from '../../apps/server/src/modules/due-dates/due-facts.ts';
import { keptRow } from '../../apps/server/src/modules/due-dates/kept-row.ts';
import { KeptDue } from '../../apps/server/src/modules/due-dates/public.ts';
import { readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as } from '../support/people.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

/**
 * Several propellers that left after an overhaul each. What is kept must be what a computation of this moment says, whatever was
 * written since, and by whoever it is read.
 */
describe('due dates are kept', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let desk: Visitor;
  let units: string[];
  let aircraftId: string;
  const sql = async <Row extends pg.QueryResultRow>(text: string, values: unknown[] = []) => {
    const client = new pg.Client({ connectionString: shop.databaseUrl });
    await client.connect();
    return (await client.query<Row>(text, values).finally(() => client.end())).rows;
  };
  const today = () => day(Math.round(clock.seconds / 86_400));
  const columns = `unit_id::text, customer_id::text, model_id::text, aircraft_id::text, registration, position, due_on::text,
    earliest::text, latest::text, governed_by, governed_what, due_hours_tenths, hours_left_tenths, requirement, per_day, basis,
    past_hours, in_shop`;
  const kept = () => sql(`SELECT ${columns} FROM unit_due ORDER BY unit_id`);
  const fresh = async () => {
    const ids = (await sql<{ id: string }>("SELECT id FROM serialized_items WHERE kind = 'assembly'")).map(
      ({ id }) => id,
    );
    const rows = await sql<DueRow>(dueSql, [ids, today()]);
    return rows.map((row) => keptRow(row, today())).sort((a, b) => (a.unit_id < b.unit_id ? -1 : 1));
  };
  const list = async (input: object = {}) => (await desk.call(due.comingDue, { days: 3660, ...input } as never)).body;
  const read = async (readOn: string, hoursTenths: number) => {
    const answer = await desk.call(customerOperations.recordReading, {
      aircraftId,
      readOn,
      meter: 'tachometer',
      hoursTenths,
    });
    expect(answer.body).toHaveProperty('id');
    return String(answer.body.id);
  };

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    desk = await as(shop, 'front-desk');
    const jobs: Job[] = [];
    for (const serial of ['QD100', 'QD200', 'QD300']) jobs.push(await Job.arrived(shop, serial));
    units = jobs.map(({ unitId }) => unitId);
    // Overhauled and gone for years: the papers as they would stand, without working three propellers through the shop.
    for (const [index, id] of units.entries()) {
      const on = day(-1000 + 100 * index);
      await sql(
        'UPDATE work_orders SET received_on = $2, stage = $3, shipped_at = $4, closed_at = $4 WHERE unit_id = $1',
        [...[id, on, 'closed', `${on}T18:00:00Z`]],
      );
      await sql(
        `INSERT INTO time_records (id, item_id, recorded_on, since_overhaul_tenths, meter, meter_tenths, basis, recorded_at)
         VALUES (gen_random_uuid(), $1, $2, 0, 'tachometer', 30000, 'overhaul', $3)`,
        [id, on, `${on}T18:00:00Z`],
      );
    }
    aircraftId =
      (await readsOf(shop).workOrder.findFirstOrThrow({ where: { unitId: units[0] ?? '' } })).aircraftId ?? '';
    await shop.running.app.get(KeptDue).whole();
  }, 120_000);
  afterAll(() => shop.close());

  it('of every assembly, the list in order of the day', async () => {
    expect(await kept()).toEqual(await fresh());
    const { rows, kept: state } = await list();
    expect(rows.map(({ unit }) => unit.serial)).toEqual(['QD100', 'QD200', 'QD300']);
    expect(rows[0]).toMatchObject({
      governedWhat: expect.stringMatching(/^time between overhauls, .* rev\. /),
      overdue: false,
    });
    expect(state).toEqual({ wholeOn: today(), running: null });
  });

  it('and follow a reading, a struck one, a replaced meter, an installation and a new overhaul by the next who asks', async () => {
    const before = await kept();
    await read(day(-200), 40_000);
    const second = await read(day(-20), 44_000);
    await list();
    const withReadings = await kept();
    expect(withReadings).not.toEqual(before);
    expect(withReadings).toEqual(await fresh());
    await desk.call(meterOperations.strikeReading, { readingId: second, reason: 'another aircraft’s' });
    await list();
    expect(await kept()).toEqual(await fresh());
    const change = {
      aircraftId,
      meter: 'tachometer' as const,
      changedOn: day(-10),
      oldTenths: 43_000,
      newTenths: 0,
      basis: 'log',
    };
    expect((await desk.call(meterOperations.recordMeterChange, change)).body).toHaveProperty('id');
    const on = {
      aircraftId,
      position: 'single' as const,
      meter: 'tachometer' as const,
      from: day(-900),
      fromTenths: 30_100,
    };
    const installed = await desk.call(intervalOperations.reportInstalled, {
      itemId: units[0] ?? '',
      basis: 'log',
      ...on,
    });
    expect(installed.body).toHaveProperty('id');
    await list();
    expect(await kept()).toEqual(await fresh());
  });

  it('also where nobody asks: what was written is taken in by itself', async () => {
    await read(day(-5), 100);
    const expected = await fresh();
    for (let tries = 0; tries < 100 && JSON.stringify(await kept()) !== JSON.stringify(expected); tries += 1)
      await new Promise((resolve) => setTimeout(resolve, 50));
    expect(await kept()).toEqual(expected);
  });

  it('a unit that comes in leaves the list', async () => {
    await Job.arrived(shop, 'QD300');
    expect((await list()).rows.map(({ unit }) => unit.serial)).not.toContain('QD300');
    expect(await kept()).toEqual(await fresh());
  });

  it('whoever works them out at once, the answer is that of the last write', async () => {
    const service = shop.running.app.get(KeptDue);
    const turns = [1, 2, 3, 4, 5].map(async (step) => {
      await read(day(-5 + step), 100 + 10 * step);
      await Promise.all([service.whole(), list()]);
    });
    await Promise.all(turns);
    await list();
    expect(await kept()).toEqual(await fresh());
  });

  it('a manager asks for all of them anew, and a new day brings new dates', async () => {
    await sql("UPDATE unit_due SET due_on = '2001-01-01'");
    expect((await desk.call(due.recomputeDueDates, {})).body).toHaveProperty('id');
    await list();
    expect(await kept()).toEqual(await fresh());
    clock.seconds = 40 * 86_400;
    const { kept: state } = await list();
    expect(state.wholeOn).toBe(today());
    expect(await kept()).toEqual(await fresh());
  });

  it('a figure struck by mistake may be entered again the same day; one that stands may not', async () => {
    const figure = { aircraftId, readOn: today(), meter: 'tachometer' as const, hoursTenths: 900 };
    const record = () => desk.call(customerOperations.recordReading, figure);
    for (const reason of ['typed on the wrong aircraft', 'and once more']) {
      const { id } = (await record()).body;
      expect((await desk.call(meterOperations.strikeReading, { readingId: String(id), reason })).status).toBe(200);
    }
    expect((await record()).status).toBe(200);
    expect((await record()).body).toMatchObject({ type: '/problems/already-exists' });
    await list();
    expect(await kept()).toEqual(await fresh());
  });

  it('a page goes on after the one before, and filters narrow it', async () => {
    const whole = (await list()).rows.map(({ unit }) => unit.id);
    const first = await list({ limit: 1 });
    const second = await list({ limit: 1, after: first.next });
    expect([...first.rows, ...second.rows].map(({ unit }) => unit.id)).toEqual(whole.slice(0, 2));
    expect(second.next).toBeNull();
    const row = first.rows[0];
    const month = String(row?.dueOn).slice(0, 7);
    expect((await list({ month })).rows.every(({ dueOn }) => dueOn.startsWith(month))).toBe(true);
    expect((await list({ month })).rows.map(({ unit }) => unit.id)).toContain(row?.unit.id);
    expect((await list({ search: 'qd200' })).rows.map(({ unit }) => unit.serial)).toEqual(['QD200']);
    expect((await list({ search: '%' })).rows).toEqual([]);
    expect((await list({ customerId: row?.customer.id, modelId: row?.unit.modelId })).rows.length).toBeGreaterThan(0);
    expect((await list({ modelId: row?.unit.id })).rows).toEqual([]);
    expect((await list({ from: day(3650), to: day(3660) })).rows).toEqual([]);
    const bad = await desk.call(due.comingDue, { after: '2026-02-30 nobody' } as never);
    expect(bad).toMatchObject({ status: 422, body: { type: '/problems/invalid-input' } });
  });

  it('never move later when a time between overhauls tightens, in hours or in months, nor does a unit leave the list', async () => {
    const dates = async (tbo: { hours: number; months: number }) => {
      await sql('UPDATE tbo_rules SET hours_tenths = $1, months = $2', [tbo.hours, tbo.months]);
      await shop.running.app.get(KeptDue).whole();
      const rows = await sql<{ unit_id: string; due_on: string }>(
        'SELECT unit_id::text, due_on::text FROM unit_due WHERE due_on IS NOT NULL ORDER BY 1',
      );
      return new Map(rows.map(({ unit_id, due_on }) => [unit_id, due_on]));
    };
    const limit = fc.record({
      ...{ hours: fc.integer({ min: 1_000, max: 40_000 }), months: fc.integer({ min: 1, max: 144 }) },
      ...{ lessHours: fc.nat(900), lessMonths: fc.nat(40) },
    });
    let seen = 0;
    await fc.assert(
      fc.asyncProperty(limit, async ({ hours, months, lessHours, lessMonths }) => {
        const before = await dates({ hours, months });
        const after = await dates({ hours: hours - lessHours, months: Math.max(1, months - lessMonths) });
        expect([...after.keys()]).toEqual([...before.keys()]);
        for (const [unit, dueOn] of after) expect(dueOn <= String(before.get(unit))).toBe(true);
        seen += after.size;
      }),
      { numRuns: 12 },
    );
    expect(seen).toBeGreaterThan(12);
  }, 60_000);
});
