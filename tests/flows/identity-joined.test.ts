import { unitOperations as op } from '@hubwright/contracts/units/operations';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { receiveUnit } from '../../apps/server/src/modules/work-orders/receive-unit.command.ts';
import { threeBlade } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused, tableHashes } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('a serial read at teardown is one the shop knows', () => {
  let shop: ShopApp;
  let inspector: Visitor;
  let earlier: Job;
  let now: Job;
  const partAt = async (unitId: string, position: string) =>
    (
      await now.reads.installation.findFirstOrThrow({
        where: { parentId: unitId, position, toDate: null },
        include: { item: true },
      })
    ).item;
  const closed = async (id: string) => {
    const client = new pg.Client({ connectionString: shop.databaseUrl });
    await client.connect();
    await client.query("UPDATE work_orders SET stage = 'closed', closed_at = now() WHERE id = $1", [id]);
    await client.end();
  };

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    inspector = await as(shop, 'inspector');
    earlier = await Job.arrived(shop, 'QJ7001');
    const arrival = await threeBlade(shop, 'QJ7001');
    // At the dock only blade 1 can be read, and it is another one than last time.
    const unread = arrival.parts.map((part) => ({ ...part, serial: part.position === 'blade 1' ? 'B1-OTHER' : null }));
    now = await Job.arrived(shop, null as never, {
      parts: unread,
      times: { sinceNewTenths: 22_500, sinceOverhaulTenths: 1_500, meter: 'tachometer', meterTenths: 30_000 },
    });
    await now.tornDown();
  });
  afterAll(() => shop.close());

  const join = async (itemId: string, serial: string) => {
    const { version } = await now.reads.serializedItem.findUniqueOrThrow({ where: { id: itemId } });
    return { operation: op.joinIdentity, input: { itemId, serial, signature: pin }, options: { version } };
  };

  it('is not confirmed as a second part, nor joined while the first is in work', async () => {
    const on = { shop, visitor: inspector };
    const { operation: _, ...request } = await join(now.unitId, 'QJ7001');
    await expectRefused(on, { operation: op.confirmIdentity, ...request }, { status: 409, type: 'identity-taken' });
    const refused = await expectRefused(on, await join(now.unitId, 'QJ7001'), {
      status: 409,
      type: 'identity-elsewhere',
    });
    expect(refused.detail).toContain(`is on ${earlier.number}, which is not closed`);
    const seen = await inspector.call(op.knownIdentity, { itemId: now.unitId, serial: 'qj7001' });
    expect(seen.body).toMatchObject({ refused: refused.detail, joining: { known: { id: earlier.unitId } } });
    await closed(earlier.id);
  });

  it('is refused where no such part is on record, to other roles, and on a stale version', async () => {
    const on = { shop, visitor: inspector };
    await expectRefused(on, await join(now.unitId, 'QJ7999'), { status: 409, type: 'identity-unknown' });
    const request = await join(now.unitId, 'QJ7001');
    await expectRefused({ shop, visitor: await as(shop, 'technician') }, request, {
      status: 403,
      type: 'not-permitted',
    });
    await expectRefused(on, { ...request, options: { version: 99 } }, { status: 412, type: 'out-of-date' });
    const none = await inspector.call(op.knownIdentity, { itemId: now.unitId, serial: 'QJ7999' });
    expect(none.body).toEqual({ joining: null, refused: null });
  });

  it('is that unit: shown before signing, then visit, places and the newer reading go on under it', async () => {
    const provisional = now.unitId;
    const { operation, input, options } = await join(provisional, 'QJ7001');
    const before = await tableHashes(shop.databaseUrl);
    const tried = await inspector.call(operation, input, { ...options, dryRun: true });
    expect(await tableHashes(shop.databaseUrl)).toEqual(before);
    const seen = await inspector.call(op.knownIdentity, { itemId: provisional, serial: 'QJ7001' });
    expect(tried.body.joining).toEqual(seen.body.joining);
    expect(seen.body.joining).toMatchObject({
      timesFrom: 'reading',
      times: { sinceNewTenths: 22_500, sinceOverhaulTenths: 1_500 },
      effects: expect.arrayContaining([`Q76-B B1-QJ7001 was last in it at blade 1 and is not any more.`]),
    });
    const done = await inspector.call(operation, input, options);
    expect([done.status, done.body.joining]).toEqual([200, tried.body.joining]);

    expect((await now.workOrder()).unitId).toBe(earlier.unitId);
    const detail = await inspector.call(workOrderOperations.workOrder, { workOrderId: now.id });
    expect(detail.body).toMatchObject({ unit: { serial: 'QJ7001' }, times: { sinceNewTenths: 22_500 } });
    expect(await now.reads.traveler.count({ where: { itemId: provisional } })).toBe(0);
    expect((await partAt(earlier.unitId, 'blade 1')).serial).toBe('B1-OTHER');
    const history = await inspector.call(op.unitHistory, { itemId: earlier.unitId });
    expect(history.body.workOrders.map(({ number }) => number).sort()).toEqual([earlier.number, now.number].sort());
    expect(history.body.times.map(({ sinceNewTenths }) => sinceNewTenths)).toEqual([22_500, 21_004]);
    const left = await inspector.call(op.unitHistory, { itemId: provisional });
    expect(left.body.joinedInto).toEqual({ id: earlier.unitId, serial: 'QJ7001' });
    const links = await now.reads.recordLink.findMany({
      where: {
        subjectKind: 'unit',
        subjectId: { in: [provisional, earlier.unitId] },
        entry: { command: 'join-identity' },
      },
    });
    expect(new Set(links.map(({ subjectId }) => subjectId))).toEqual(new Set([provisional, earlier.unitId]));
    expect(new Set(links.map(({ entryId }) => entryId)).size).toBe(1);
    await expectRefused({ shop, visitor: inspector }, await join(provisional, 'QJ7001'), {
      status: 409,
      type: 'identity-settled',
    });
  });

  it('keeps the times of the part on record where the arrival knew none, and takes it out of where it last sat', async () => {
    const hub = await partAt(earlier.unitId, 'hub');
    expect(hub.serial).toBeNull();
    const seen = await inspector.call(op.knownIdentity, { itemId: hub.id, serial: 'H-QJ7001' });
    expect(seen.body).toMatchObject({ refused: null, joining: { timesFrom: 'record' } });
    const { operation, input, options } = await join(hub.id, 'H-QJ7001');
    expect((await inspector.call(operation, input, options)).status).toBe(200);
    const [traveler] = await now.reads.traveler.findMany({ where: { workOrderId: now.id, position: 'hub' } });
    expect((await now.reads.serializedItem.findUnique({ where: { id: traveler?.itemId ?? '' } }))?.serial).toBe(
      'H-QJ7001',
    );
    const open = await now.reads.installation.findMany({ where: { itemId: traveler?.itemId ?? '', toDate: null } });
    expect(open.map(({ parentId, position }) => [parentId, position])).toEqual([[earlier.unitId, 'hub']]);
  });

  it('does not let fewer hours than on record count', async () => {
    const first = await shop.run(receiveUnit, await threeBlade(shop, 'QJ7100'), now.people.desk);
    await closed(first.id);
    const fewer = { sinceNewTenths: 9_000, sinceOverhaulTenths: 'unknown' as const, meter: 'tachometer' as const };
    const again = await shop.run(
      receiveUnit,
      await threeBlade(shop, null as never, {
        times: fewer,
        parts: (await threeBlade(shop, 'QJ7100')).parts.map((part) => ({ ...part, serial: null })),
      }),
      now.people.desk,
    );
    const seen = await inspector.call(op.knownIdentity, { itemId: again.unitId, serial: 'QJ7100' });
    expect(seen.body.joining).toMatchObject({ timesFrom: 'record', times: { sinceNewTenths: 21_004 } });
    expect(seen.body.joining?.effects.join(' ')).toContain('900 h since new');
  });
});
