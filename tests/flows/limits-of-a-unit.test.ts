// size: one story of one propeller told in order; each step stands on the one before
import { customerOperations } from '@hubwright/contracts/customers/operations';
import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { dueDateOperations as due } from '@hubwright/contracts/due-dates/operations';
import { manualOperations } from '@hubwright/contracts/manuals/operations';
import type { ModelContent } from '@hubwright/contracts/manuals/revision';
import { keepingOperations as op } from '@hubwright/contracts/units/keeping-operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { addDays, addMonths } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

/** A propeller that left after an overhaul 200 days ago, and a manual that says more and more of it. */
describe('what limits a unit beside its hours and months', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let inspector: Visitor;
  let unitId: string;
  let modelId: string;
  let hubPart: string;
  const overhauled = day(-200);
  const sql = async <Row extends pg.QueryResultRow>(text: string, values: unknown[] = []) => {
    const client = new pg.Client({ connectionString: shop.databaseUrl });
    await client.connect();
    return (await client.query<Row>(text, values).finally(() => client.end())).rows;
  };
  const answer = async () => (await desk.call(due.nextDue, { unitId })).body;
  /** What the list has of it: the kept answer must follow every command. */
  const listed = async () =>
    (await desk.call(due.comingDue, { days: 3660, limit: 200 } as never)).body.rows.find(
      ({ unit }) => unit.id === unitId,
    );

  /** The current revision once more with other limits, as an inspector enters it. */
  const issueWith = async (revision: string, changes: Partial<ModelContent>) => {
    const current = await readsOf(shop).manualRevision.findFirstOrThrow({
      where: { state: 'current', manual: { models: { some: { id: modelId } } } },
    });
    const { body: shown } = await inspector.call(manualOperations.showRevision, { revisionId: current.id });
    const models = shown.models.map(({ designation: _, kitList, routes, ...content }) => ({
      ...content,
      kitList: kitList.map(({ id: __, sequence: ___, description: ____, ...line }) => line),
      routes: routes.map(({ id: __, ...route }) => route),
      ...(content.modelId === modelId ? changes : {}),
    }));
    const issued = await inspector.call(manualOperations.issueRevision, {
      ...{ manualId: shown.manual.id, revision, issuedOn: day(-1), models: models as never },
    });
    expect(issued.body).toHaveProperty('id');
    return String(issued.body.id);
  };

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [desk, inspector] = [await as(shop, 'front-desk'), await as(shop, 'inspector')];
    const job = await Job.arrived(shop, 'QD700', { use: 'agricultural', madeOn: day(-4000) });
    unitId = job.unitId;
    modelId = (await job.workOrder()).modelId;
    const at = `${overhauled}T18:00:00Z`;
    await sql(
      `UPDATE work_orders SET received_on = $2::date - 30, stage = 'closed', shipped_at = $3, closed_at = $3, application_id = NULL WHERE unit_id = $1`,
      [unitId, overhauled, at],
    );
    await sql('UPDATE installations SET from_date = $2 WHERE parent_id = $1', [unitId, overhauled]);
    await sql(
      `INSERT INTO time_records (id, item_id, recorded_on, since_new_tenths, since_overhaul_tenths, since_new_overhauls, meter, meter_tenths, basis, recorded_at)
       SELECT gen_random_uuid(), item_id, $2, 20000, 0, 4, 'tachometer', 30000, 'overhaul', $3
       FROM (SELECT $1::uuid AS item_id UNION SELECT item_id FROM installations WHERE parent_id = $1) all_items`,
      [unitId, overhauled, at],
    );
    // The records of arrival are of before it.
    await sql(`UPDATE time_records SET recorded_on = $2::date - 30 WHERE basis <> 'overhaul' AND work_order_id = $1`, [
      job.id,
      overhauled,
    ]);
    hubPart = (
      await readsOf(shop).installation.findFirstOrThrow({
        where: { parentId: unitId, position: 'hub' },
        include: { item: true },
      })
    ).item.partNumber;
  }, 120_000);
  afterAll(() => shop.close());

  it('go into the manual with its revision, are shown with it, and are refused where they contradict themselves', async () => {
    const seals = [
      { partNumber: 'q-or-214', installedMonths: 60, endOfMonth: false, requirement: 'required' as const },
    ];
    const storage = [{ preservation: 'long-term' as const, counts: false, longestMonths: 24 }];
    await issueWith('L1', {
      tboRules: [
        { months: 72, endOfMonth: false, requirement: 'recommended' },
        { months: 48, endOfMonth: false, requirement: 'required', useCategory: 'agricultural' },
        { months: 60, endOfMonth: false, requirement: 'recommended', useCategory: 'acrobatic' },
        { months: 36, endOfMonth: false, requirement: 'required', ageFromMonths: 240 },
      ],
      lifeLimits: [{ partNumber: hubPart, hoursTenths: 60_000, overhauls: 4 }],
      serviceLimits: { storage, seals },
    });
    const { body } = await desk.call(due.nextDue, { unitId });
    expect(body.limits).toMatchObject([{ months: 48, use: 'agricultural', revision: expect.stringContaining('L1') }]);
    const current = await readsOf(shop).manualRevision.findFirstOrThrow({ where: { revision: 'L1' } });
    const { body: shown } = await desk.call(manualOperations.showRevision, { revisionId: current.id });
    expect(shown.models.find((one) => one.modelId === modelId)).toMatchObject({
      lifeLimits: [{ overhauls: 4 }],
      serviceLimits: { storage, seals: [{ partNumber: 'Q-OR-214', installedMonths: 60 }] },
    });
    const refused = await inspector.call(manualOperations.issueRevision, {
      ...{ manualId: shown.manual.id, revision: 'L2', issuedOn: day(-1) },
      models: [
        {
          ...{ modelId, kitList: [], routes: [], tboRules: [] },
          serviceLimits: { storage: [...storage, ...storage], seals: [] },
        },
      ],
    });
    expect(refused.body).toMatchObject({ errors: [{ pointer: '/models/0/serviceLimits/storage/1' }] });
  });

  it('by use: what the desk was told at receipt decides; untold, the strictest counts and the answer says so', async () => {
    expect(await answer()).toMatchObject({ dueOn: addMonths(overhauled, 48), requirement: 'required' });
    expect(await listed()).toMatchObject({ dueOn: addMonths(overhauled, 48) });
    const said = await desk.call(op.sayUse, { itemId: unitId, use: 'acrobatic', basis: 'the owner, by telephone' });
    expect(said.status).toBe(200);
    expect(await answer()).toMatchObject({ dueOn: addMonths(overhauled, 60) });
    expect(await listed()).toMatchObject({ dueOn: addMonths(overhauled, 60) });
    await desk.call(op.sayUse, { itemId: unitId, basis: 'sold; the new owner has not said' });
    const unknown = await answer();
    expect(unknown.dueOn).toBe(addMonths(overhauled, 48));
    expect(unknown.basis).toContain(
      'A limit for agricultural use counts, as nobody said how the unit is used: the strictest holds.',
    );
    const { body: kept } = await desk.call(op.unitKeeping, { itemId: unitId });
    expect(kept).toMatchObject({ use: null, madeOn: day(-4000), uses: { length: 3 } });
    expect((await desk.call(op.sayUse, { itemId: unitId, madeOn: day(1), basis: 'x' })).body).toMatchObject({
      type: '/problems/date-ahead',
    });
    await desk.call(op.sayUse, { itemId: unitId, use: 'normal', basis: 'the new owner' });
    expect(await answer()).toMatchObject({ dueOn: addMonths(overhauled, 72) });
  });

  it('by age: on the day of the overhaul it was old enough, or not', async () => {
    await desk.call(op.sayUse, { itemId: unitId, use: 'normal', madeOn: day(-9000), basis: 'data plate' });
    expect(await answer()).toMatchObject({ dueOn: addMonths(overhauled, 36), requirement: 'required' });
    await desk.call(op.sayUse, { itemId: unitId, use: 'normal', madeOn: day(-4000), basis: 'plate read again' });
    expect(await answer()).toMatchObject({ dueOn: addMonths(overhauled, 72) });
  });

  it('by storage: days that the manual does not count move the calendar on, and no others', async () => {
    const put = (input: object) =>
      desk.call(op.putInStorage, { itemId: unitId, basis: 'owner’s letter', ...input } as never);
    const first = await put({ preservation: 'long-term', from: day(-100), to: day(-60) });
    expect(first.status).toBe(200);
    expect(await answer()).toMatchObject({
      dueOn: addDays(addMonths(overhauled, 72), 40),
      governedWhat: expect.stringContaining('without 40 days in storage'),
      basis: expect.stringContaining('does not count these 40 days'),
    });
    expect((await put({ preservation: 'none', from: day(-80), to: day(-70) })).body).toMatchObject({
      type: '/problems/storage-overlaps',
    });
    expect((await put({ preservation: 'none', from: day(1) })).body).toMatchObject({ type: '/problems/date-ahead' });
    await put({ preservation: 'short-term', from: day(-60), to: day(-30) });
    expect((await answer()).dueOn).toBe(addDays(addMonths(overhauled, 72), 40));
    const open = await put({ preservation: 'long-term', from: day(-10) });
    expect(await answer()).toMatchObject({
      dueOn: addMonths(day(-10), 24),
      governedWhat: expect.stringContaining('longest storage without an inspection'),
    });
    const { body } = await desk.call(op.unitKeeping, { itemId: unitId });
    const standing = body.storage.find(({ periodId }) => periodId === open.body.id);
    const named = { periodId: String(open.body.id), supersedesId: String(standing?.id) };
    await desk.call(op.inspectInStorage, { ...named, on: day(-2), basis: 'preserved anew' });
    expect((await answer()).dueOn).toBe(addMonths(day(-2), 24));
    expect((await desk.call(op.takeOutOfStorage, { ...named, to: day(0), basis: 'x' })).body).toMatchObject({
      type: '/problems/storage-superseded',
    });
    const now = (await desk.call(op.unitKeeping, { itemId: unitId })).body.storage[0];
    const again = { periodId: named.periodId, supersedesId: String(now?.id) };
    const out = await desk.call(op.withdrawStorage, { ...again, reason: 'another propeller was meant' });
    expect(out.status).toBe(200);
    expect((await answer()).dueOn).toBe(addDays(addMonths(overhauled, 72), 40));
  });

  it('by life: hours since new dated by the meter, overhauls told', async () => {
    const notes = (await answer()).notes.join(' ');
    expect(notes).toContain('4 overhauls; it had them all and is retired at the next overhaul.');
    expect(notes).toContain('Seal Q-OR-214: no fitting is on record here');
    await sql('UPDATE life_limits SET hours_tenths = 20100 WHERE part_number = $1', [hubPart.toUpperCase()]);
    // 10 h left, and 5 h flown in 100 days since: the other 5 h are 100 days away.
    const { aircraft_id: aircraftId } = (
      await sql('SELECT aircraft_id FROM work_orders WHERE unit_id = $1', [unitId])
    )[0] as {
      aircraft_id: string;
    };
    for (const [ago, tenths] of [
      [-100, 30_000],
      [0, 30_050],
    ] as const) {
      const read = { aircraftId, readOn: day(ago), meter: 'tachometer' as const, hoursTenths: tenths };
      expect((await desk.call(customerOperations.recordReading, read)).status).toBe(200);
    }
    const life = (await answer()).others.find(({ kind }) => kind === 'life');
    expect(life).toMatchObject({ what: expect.stringContaining('life limit of hub'), dueOn: day(100) });
    expect(await answer()).toMatchObject({ governedBy: 'life', dueHoursTenths: 30_100, hoursLeftTenths: 50 });
  });

  it('by seals: months from the day its kit was closed over them', async () => {
    await sql('UPDATE life_limits SET hours_tenths = NULL WHERE part_number = $1', [hubPart.toUpperCase()]);
    const [part] = await sql<{ id: string; number: string }>('SELECT id, number FROM parts ORDER BY number LIMIT 1');
    const lotId = '0197c000-0000-7000-8000-00000000a001';
    await sql(
      `INSERT INTO lots (id, code, part_id, state, origin, source_class, cure_date, unit_price, received_at)
       VALUES ($1, 'LOT-SEAL', $2, 'accepted', 'purchase', 'maker-new', '4Q25', '1.00', now())`,
      [lotId, part?.id],
    );
    await issueWith('L3', {
      serviceLimits: {
        storage: [{ preservation: 'long-term', counts: false }],
        seals: [{ partNumber: part?.number ?? '', installedMonths: 60, endOfMonth: false, requirement: 'required' }],
      },
    });
    await sql(`UPDATE kits SET closed_at = $2 WHERE work_order_id IN (SELECT id FROM work_orders WHERE unit_id = $1)`, [
      ...[unitId, `${overhauled}T18:00:00Z`],
    ]);
    await sql(
      `INSERT INTO balances (lot_id, place_kind, place_ref, on_hand)
       SELECT $1::uuid, 'unit', id::text, 1 FROM work_orders WHERE unit_id = $2`,
      [lotId, unitId],
    );
    const on = addMonths(overhauled, 60);
    expect(await answer()).toMatchObject({
      dueOn: on,
      governedBy: 'calendar',
      governedWhat: expect.stringContaining(`life of seal ${part?.number}`),
    });
  });

  it('by directives: one that waits for its first action, whichever comes first, and overdue once its day is past', async () => {
    const issue = async (number: string, more: object) => {
      const issued = await inspector.call(directiveOperations.issueDirective, {
        ...{ kind: 'airworthiness-directive', number, title: 'Hub bolt', issuer: 'the authority', issuedOn: day(-60) },
        ...{ effectiveOn: day(-50), binding: 'required', repeats: 'one-time', action: 'Change the hub bolts.' },
        ...{ lines: [{ modelId }], signature: pin, ...more },
      } as never);
      expect(issued.status).toBe(200);
      return String((issued.body as { id: string }).id);
    };
    await issue('D-WAIT', { firstMonths: 12 });
    const until = addMonths(day(-50), 12);
    expect(await answer()).toMatchObject({
      ...{ dueOn: until, governedBy: 'directive', governedWhat: 'D-WAIT, Hub bolt', overdue: false },
      requirement: 'required',
    });
    expect(await listed()).toMatchObject({ dueOn: until, governedBy: 'directive', governedWhat: 'D-WAIT, Hub bolt' });
    await issue('D-HOURS', { firstHoursTenths: 60 });
    expect((await answer()).others.find(({ what }) => what.startsWith('D-HOURS'))?.dueOn).toBe(day(20));
    const late = await issue('D-LATE', { firstDays: 30 });
    expect(await answer()).toMatchObject({ dueOn: day(-20), overdue: true, governedWhat: 'D-LATE, Hub bolt' });
    expect(await listed()).toMatchObject({ dueOn: day(-20), overdue: true });
    const shown = await desk.call(directiveOperations.unitDirectives, { unitId });
    expect(shown.body.standings.map(({ directive, state }) => [directive.number, state])).toEqual(
      expect.arrayContaining([
        ['D-LATE', 'open'],
        ['D-WAIT', 'not-due'],
      ]),
    );
    await inspector.call(
      directiveOperations.withdrawDirective,
      { directiveId: late, reason: 'issued in error', signature: pin },
      { version: 1 },
    );
    expect(await listed()).toMatchObject({ dueOn: day(20), overdue: false });
  });

  it('by overhauls counted from new, as a paper says them', async () => {
    const hub = await readsOf(shop).installation.findFirstOrThrow({
      where: { parentId: unitId, position: 'hub' },
      include: { item: true },
    });
    const said = (sinceNewOverhauls: number) =>
      inspector.call(
        unitOperations.establishTimes,
        {
          ...{ itemId: hub.itemId, sinceNewTenths: 20_000, sinceOverhaulTenths: 0, sinceNewOverhauls },
          ...{ basis: 'the hub’s card', signature: pin },
        },
        { version: hub.item.version },
      );
    expect((await said(3)).body).toMatchObject({ errors: [{ pointer: '/sinceNewOverhauls' }] });
    expect((await said(5)).status).toBe(200);
    expect((await answer()).notes.join(' ')).toContain('more than that are on record, it is used up.');
  });
});
