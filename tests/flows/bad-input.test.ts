// size: one list in one order, to be ticked off; each row stands for itself

import { inventoryOperations as stock } from '@hubwright/contracts/inventory/operations';
import { kitsOperations as kits } from '@hubwright/contracts/kits/operations';
import { releaseOperations as releases } from '@hubwright/contracts/releases/operations';
import { workOrderOperations as workOrders } from '@hubwright/contracts/work-orders/operations';
import { travelerOperations as travelers } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { quarantineLot } from '../../apps/server/src/modules/inventory/quarantine-lot.command.ts';
import { reserveLine } from '../../apps/server/src/modules/kits/reserve-line.command.ts';
import { grantAuthorisation } from '../../apps/server/src/modules/people/grant-authorisation.command.ts';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { type Arrival, threeBlade } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { expectUnchanged, tableHashes } from '../support/refused.ts';
import type { Answer, Visitor } from '../support/shop-app.ts';
import { firstList, type KitOf, type PartName, Stockroom } from '../support/stockroom.ts';

/** One thing that people or programs get wrong: how it is answered, and that not one row of any table is another after it. */
interface Row {
  readonly what: string;
  readonly status: number;
  readonly type: string;
  readonly pointer?: string;
  /** Brings the shop to where it can go wrong. */
  prepare?(): Promise<unknown>;
  send(): Promise<Answer>;
  /** What else the answer must say. */
  says?: unknown;
}

describe('bad input', () => {
  let room: Stockroom;
  let kit: KitOf;
  let other: KitOf;
  let customer: string;
  let arrival: Arrival;
  let job: Job;
  const people: Record<string, Visitor> = {};
  let lot: { id: string; code: string; version: number };
  let step: { id: string };

  beforeAll(async () => {
    room = await Stockroom.open();
    for (const who of ['front-desk', 'parts-room', 'technician', 'inspector', 'sunniva', 'caspar', 'piers'])
      people[who] = await as(room.shop, who);
    customer = await room.customer('BAD', ['maker-new']);
    [kit, other] = [await room.kit('BI-1', customer), await room.kit('BI-2', customer)];
    arrival = await threeBlade(room.shop, 'QB5001');
    job = await Job.arrived(room.shop, 'QB5001');
    await job.tornDown();
  }, 60_000);
  afterAll(() => room.close());

  const by = (who: string) => people[who] as Visitor;
  const shelved =
    (name: PartName, quantity: number, more = {}) =>
    async () => {
      lot = await room.onShelf(name, quantity, more);
    };
  const issue = (more: object = {}) =>
    by('parts-room').call(kits.issueLot, { kitId: kit.kitId, lotCode: lot.code, ...more });
  const receive = (change: object) =>
    by('front-desk').send('POST', '/api/work-orders', { body: { ...arrival, ...change } });
  const hours = (sinceNewTenths: number) =>
    receive({ serial: 'QB5999', parts: [], times: { sinceNewTenths, sinceOverhaulTenths: 0, meter: 'tachometer' } });
  const sign = (who: string, more: object = {}) =>
    by(who).call(travelers.signStep, { stepId: step.id, signature: pin, ...more });
  const close = (of: KitOf) =>
    by('technician').call(travelers.closeBuild, { workOrderId: of.workOrderId, signature: pin });
  const release = async () =>
    by('sunniva').call(
      releases.approveRelease,
      { workOrderId: job.id, signature: pin },
      { version: (await job.workOrder()).version },
    );
  /** The whole line but for one piece: in the tray or not pulled at all. */
  const building = async (fill: (of: KitOf) => Promise<unknown>) => {
    other = await room.kit(`BI-${Math.random().toString(36).slice(2, 8)}`, customer, 'build');
    await fill(other);
  };
  const twice = { key: 'one-intention-0001' };
  const once = () =>
    by('parts-room').call(kits.issueLot, { kitId: other.kitId, lotCode: lot.code, quantity: 5 }, twice);

  const rows: Row[] = [
    {
      what: 'unit already in the shop',
      ...{ status: 409, type: 'already-in-shop', pointer: '/serial' },
      send: () => receive({}),
    },
    {
      what: 'unknown scan',
      ...{ status: 404, type: 'unknown-scan' },
      send: () => by('parts-room').call(kits.issueLot, { kitId: kit.kitId, lotCode: 'LOT-99999' }),
    },
    {
      what: 'issuing expired stock',
      ...{ status: 409, type: 'lot-expired' },
      prepare: async () => {
        await shelved('seal', 5)();
        await room.sql('UPDATE lots SET expires_on = $2 WHERE id = $1', [lot.id, day(-2)]);
      },
      send: issue,
    },
    {
      what: 'issuing quarantined stock',
      ...{ status: 409, type: 'lot-not-accepted' },
      prepare: async () => {
        await shelved('washer', 5)();
        await room.shop.run(quarantineLot, { lotId: lot.id, reason: 'doubt' }, room.inspector);
      },
      send: issue,
    },
    {
      what: 'issuing uncertified stock',
      ...{ status: 409, type: 'certificate-missing' },
      prepare: async () => {
        await shelved('seal', 5)();
        await room.sql("UPDATE lots SET certificate = '' WHERE id = $1", [lot.id]);
      },
      send: issue,
    },
    {
      what: 'issuing reserved stock',
      ...{ status: 409, type: 'lot-reserved' },
      prepare: async () => {
        await shelved('washer', 2)();
        const promise = { kitId: other.kitId, lineId: other.line.cover, lotId: lot.id };
        await room.shop.run(reserveLine, promise, room.clerk);
      },
      send: issue,
    },
    {
      what: 'issuing wrong-class stock',
      ...{ status: 409, type: 'source-not-accepted' },
      prepare: shelved('washer', 5, { sourceClass: 'used-serviceable' }),
      send: issue,
    },
    {
      what: 'issuing more than is held',
      ...{ status: 409, type: 'not-enough' },
      prepare: shelved('washer', 1),
      send: () => issue({ quantity: 2 }),
    },
    {
      what: 'two clerks, one last lot: the one who came second',
      ...{ status: 409, type: 'not-enough' },
      prepare: async () => {
        await shelved('wire', 10)();
        const reach = (who: string, of: KitOf) =>
          by(who).call(kits.issueLot, { kitId: of.kitId, lotCode: lot.code, quantity: 10 });
        const both = await Promise.all([reach('parts-room', kit), reach('caspar', other)]);
        expect(both.map(({ status }) => status).sort()).toEqual([200, 409]);
        expect(both.find(({ status }) => status === 409)?.body.type).toBe('/problems/not-enough');
        expect(await room.places(lot.id)).toEqual({ tray: 10 });
      },
      send: () => issue({ quantity: 10 }),
    },
    {
      what: 'double click and replay: the same key with another request',
      ...{ status: 422, type: 'key-reused' },
      prepare: async () => {
        await shelved('wire', 100)();
        const clicks = await Promise.all([once(), once()]);
        const done = clicks.filter(({ status }) => status === 200);
        expect(done.length).toBeGreaterThan(0);
        const before = await tableHashes(room.shop.databaseUrl);
        const replay = await once();
        expect([replay.status, replay.body]).toEqual([200, done[0]?.body]);
        expect(await tableHashes(room.shop.databaseUrl)).toEqual(before);
        expect(await room.places(lot.id)).toEqual({ 'bin B-01': 95, tray: 5 });
      },
      send: () => by('parts-room').call(kits.issueLot, { kitId: other.kitId, lotCode: lot.code, quantity: 6 }, twice),
    },
    {
      what: 'signing out of order',
      ...{ status: 409, type: 'step-out-of-order' },
      prepare: async () => {
        const { travelerId } = await job.nextAt('blade 1');
        step = await job.reads.travelerStep.findFirstOrThrow({ where: { travelerId, sequence: 2 } });
      },
      send: () => sign('technician'),
    },
    {
      what: 'signing without authorisation',
      ...{ status: 403, type: 'not-authorised' },
      prepare: async () => {
        step = await job.nextAt('assembly');
      },
      send: () => sign('piers'),
    },
    {
      what: 'signing with an overdue gauge',
      ...{ status: 409, type: 'calibration-expired' },
      prepare: async () => {
        let next = await job.nextAt('blade 1');
        for (; next.kind !== 'measure'; next = await job.nextAt('blade 1')) await job.sign(next);
        step = next;
      },
      send: async () => {
        const next = await job.nextAt('blade 1');
        const overdue = await job.reads.instrument.findFirstOrThrow({
          where: { kind: next.instrumentKind ?? '', inService: true, calibrationDueOn: { lt: new Date(day(0)) } },
        });
        return sign('technician', { ...(await job.entryFor(next)), instrumentId: overdue.id });
      },
    },
    {
      what: 'inspecting one’s own work',
      ...{ status: 409, type: 'own-inspection' },
      prepare: async () => {
        const first = await job.nextAt('blade 2');
        const held = { process: first.process as 'cleaning', level: 'perform' as const, validFrom: day(-10) };
        const { personId } = job.people.inspector;
        await room.shop.run(grantAuthorisation, { personId, ...held }, await actorOf(room.shop, 'administrator'));
        await room.shop.run(signStep, await job.entryFor(first), job.people.inspector);
        let next = await job.nextAt('blade 2');
        for (; next.level !== 'inspect'; next = await job.nextAt('blade 2')) await job.sign(next);
        step = next;
      },
      send: async () => sign('inspector', await job.entryFor(await job.nextAt('blade 2'))),
    },
    {
      what: 'closing with leftovers',
      ...{ status: 409, type: 'build-not-closed' },
      prepare: () =>
        building(async (of) => {
          await shelved('washer', 2)();
          await room.issue(of, lot.code);
        }),
      send: () => close(other),
      says: { leftOver: [{ part: 'TW-10', quantity: 2, place: 'tray' }] },
    },
    {
      what: 'closing with something missing',
      ...{ status: 409, type: 'build-not-closed' },
      prepare: () => building(async () => undefined),
      send: () => close(other),
      says: {
        leftOver: [],
        missing: expect.arrayContaining([expect.objectContaining({ part: 'TW-10', quantity: 2 })]),
      },
    },
    {
      what: 'return to service with an open item',
      ...{ status: 409, type: 'release-blocked' },
      send: release,
      says: { open: expect.arrayContaining(['stage', 'step', 'kit'].map((kind) => expect.objectContaining({ kind }))) },
    },
    {
      what: 'return to service with an unresolved identity',
      ...{ status: 409, type: 'release-blocked' },
      prepare: async () => {
        const { itemId } = await job.reads.installation.findFirstOrThrow({
          where: { parentId: job.unitId, position: 'hub', toDate: null },
        });
        await room.sql("UPDATE serialized_items SET serial = NULL, provisional_name = 'hub' WHERE id = $1", [itemId]);
      },
      send: release,
      says: { open: expect.arrayContaining([expect.objectContaining({ kind: 'identity' })]) },
    },
    {
      what: 'stale version',
      ...{ status: 412, type: 'out-of-date' },
      send: () => by('parts-room').call(kits.setNeedBy, { kitId: kit.kitId, needBy: day(30) }, { version: 1_000 }),
      says: { version: expect.any(Number) },
    },
    {
      what: 'no version at all',
      ...{ status: 428, type: 'version-missing' },
      send: () => by('parts-room').call(kits.setNeedBy, { kitId: kit.kitId, needBy: day(30) }),
    },
    {
      what: 'superseded revision mid-work: held until an inspector rebases',
      ...{ status: 409, type: 'revision-superseded' },
      prepare: async () => {
        await building(async () => undefined);
        await room.revised(firstList.map((line) => ({ ...line, quantity: line.quantity + 1 })));
        const seen = await by('technician').call(travelers.revisionDifferences, { workOrderId: other.workOrderId });
        expect(seen.body.superseded).toBe(true);
        expect(seen.body.differences).toHaveLength(firstList.length);
      },
      send: () => close(other),
    },
    {
      what: 'superseded revision mid-work: rebased by someone else than an inspector',
      ...{ status: 403, type: 'not-permitted' },
      send: () =>
        by('technician').call(
          travelers.rebaseRevision,
          { workOrderId: other.workOrderId, signature: pin },
          { version: 1 },
        ),
    },
    {
      what: 'negative hours',
      ...{ status: 422, type: 'invalid-input', pointer: '/times/sinceNewTenths' },
      send: () => hours(-1),
    },
    {
      what: 'absurd hours',
      ...{ status: 422, type: 'invalid-input', pointer: '/times/sinceNewTenths' },
      send: () => hours(1e12),
    },
    {
      what: 'JSON of the wrong shape: a list',
      ...{ status: 400, type: 'malformed-request' },
      send: () => by('parts-room').send('POST', `/api/kits/${kit.kitId}/issues`, { body: ['LOT-1'] }),
    },
    {
      what: 'JSON of the wrong shape: cut off',
      ...{ status: 400, type: 'malformed-request' },
      send: () => by('parts-room').send('POST', `/api/kits/${kit.kitId}/issues`, { payload: '{"lotCode": ' }),
    },
    {
      what: 'JSON of the wrong shape: a field nobody knows',
      ...{ status: 422, type: 'invalid-input', pointer: '/force' },
      send: () => issue({ force: true } as object),
    },
    {
      what: 'a body of 10 MB',
      ...{ status: 413, type: 'too-large' },
      send: () =>
        by('parts-room').send('POST', stock.receiveLot.path, {
          payload: JSON.stringify({ note: 'x'.repeat(10_000_000) }),
        }),
    },
    {
      what: 'another role’s endpoint',
      ...{ status: 403, type: 'not-permitted' },
      send: () => by('technician').call(kits.issueLot, { kitId: kit.kitId, lotCode: lot.code }),
    },
    {
      what: 'another role’s endpoint, at the dock',
      ...{ status: 403, type: 'not-permitted' },
      send: () => by('parts-room').call(workOrders.receiveUnit, arrival),
    },
    {
      what: 'nobody signed in',
      ...{ status: 401, type: 'not-signed-in' },
      send: () => room.shop.visitor().call(kits.issueLot, { kitId: kit.kitId, lotCode: lot.code }),
    },
  ];

  it.each(rows.map((row) => [row.what, row] as const))(
    '%s',
    async (_, { prepare, send, says, ...refusal }) => {
      await prepare?.();
      const { body } = await expectUnchanged(room.shop, send, refusal);
      if (says) expect(body).toMatchObject(says);
    },
    30_000,
  );

  it('and the hash does see a change', async () => {
    await shelved('washer', 2)();
    const before = await tableHashes(room.shop.databaseUrl);
    expect((await issue({ quantity: 1 })).status).toBe(200);
    expect(await tableHashes(room.shop.databaseUrl)).not.toEqual(before);
  });
});
