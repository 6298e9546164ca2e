import { workOrderOperations as op } from '@hubwright/contracts/work-orders/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { type Arrival, readsOf, threeBlade, unknownTimes } from '../support/arrivals.ts';
import { as } from '../support/people.ts';
import { tableHashes } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

type Change = (arrival: Arrival) => unknown;
type Refused = [says: string, change: Change, status: number, problem: string, pointer: string | undefined];

const hours =
  (times: Arrival['times']): Change =>
  (arrival) => ({
    ...arrival,
    serial: 'QP2998',
    parts: arrival.parts.map((part) => ({ ...part, serial: `${part.serial}Y` })),
    times,
  });
const meter = { meter: 'tachometer' } as const;
const blade =
  (index: number, part: object): Change =>
  (arrival) => ({
    ...arrival,
    serial: 'QP2999',
    parts: arrival.parts.map((one, at) => ({ ...one, serial: `${one.serial}X`, ...(at === index ? part : {}) })),
  });

const refused: Refused[] = [
  ['the unit is in the shop already', (arrival) => arrival, 409, 'already-in-shop', '/serial'],
  [
    'its serial is in the shop, typed another way',
    (arrival) => ({ ...arrival, serial: ' qp2001 ' }),
    409,
    'already-in-shop',
    '/serial',
  ],
  [
    'a blade of it is in the shop on another unit',
    blade(2, { serial: 'B2-QP2001' }),
    409,
    'already-in-shop',
    '/parts/2/serial',
  ],
  [
    'hours are negative',
    hours({ ...meter, sinceNewTenths: -1, sinceOverhaulTenths: 'unknown' }),
    422,
    'invalid-input',
    '/times/sinceNewTenths',
  ],
  [
    'hours are absurd',
    hours({ ...meter, sinceNewTenths: 600_001, sinceOverhaulTenths: 0 }),
    422,
    'hours-wrong',
    '/times/sinceNewTenths',
  ],
  [
    'hours are beyond any number',
    hours({ ...meter, sinceNewTenths: 1e12, sinceOverhaulTenths: 0 }),
    422,
    'invalid-input',
    '/times/sinceNewTenths',
  ],
  [
    'hours are a fraction of a tenth',
    hours({ ...meter, sinceNewTenths: 10.5, sinceOverhaulTenths: 0 }),
    422,
    'invalid-input',
    '/times/sinceNewTenths',
  ],
  [
    'cycles are negative',
    hours({ ...meter, sinceNewTenths: 100, sinceOverhaulTenths: 0, sinceNewCycles: -1 }),
    422,
    'invalid-input',
    '/times/sinceNewCycles',
  ],
  [
    'a blade’s cycles are a fraction',
    blade(2, { sinceNewCycles: 1.5 }),
    422,
    'invalid-input',
    '/parts/2/sinceNewCycles',
  ],
  [
    'there are more since overhaul than since new',
    hours({ ...meter, sinceNewTenths: 100, sinceOverhaulTenths: 101 }),
    422,
    'hours-wrong',
    '/times/sinceOverhaulTenths',
  ],
  [
    'nobody says which meter',
    hours({ sinceNewTenths: 100, sinceOverhaulTenths: 50 }),
    422,
    'hours-wrong',
    '/times/meter',
  ],
  [
    'a blade is missing',
    (arrival) => ({ ...arrival, serial: 'QP2998', parts: arrival.parts.slice(0, 3) }),
    422,
    'parts-wrong',
    '/parts',
  ],
  ['two blades share a position', blade(2, { position: 'blade 1' }), 422, 'parts-wrong', '/parts/2'],
  ['two blades share a serial', blade(2, { serial: 'B1-QP2001X' }), 422, 'parts-wrong', '/parts/2'],
  [
    'a reseal is to answer a strike',
    (arrival) => ({ ...arrival, serial: 'QP2998', events: ['strike'], scope: 'reseal' }),
    409,
    'scope-refused',
    '/scope',
  ],
  [
    'a balance is to answer lightning',
    (arrival) => ({ ...arrival, serial: 'QP2998', events: ['lightning'], scope: 'balance-only' }),
    409,
    'scope-refused',
    '/scope',
  ],
  [
    'a governor’s scope is asked of a propeller',
    (arrival) => ({ ...arrival, serial: 'QP2998', scope: 'governor' }),
    409,
    'scope-refused',
    '/scope',
  ],
  [
    'the day is still to come',
    (arrival) => ({ ...arrival, serial: 'QP2998', receivedOn: '2999-01-01' }),
    422,
    'invalid-input',
    '/receivedOn',
  ],
  ['the event is not one', (arrival) => ({ ...arrival, events: ['bad luck'] }), 422, 'invalid-input', '/events/0'],
  ['a field is unknown', (arrival) => ({ ...arrival, colour: 'red' }), 422, 'invalid-input', '/colour'],
  ['the body is a list', () => [1, 2], 400, 'malformed-request', undefined],
  ['the body is a word', () => 'propeller', 400, 'malformed-request', undefined],
];

describe('what is refused at the dock changes nothing', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let arrival: Arrival;

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    desk = await as(shop, 'front-desk');
    arrival = await threeBlade(shop, 'QP2001');
    expect((await desk.call(op.receiveUnit, arrival)).status).toBe(200);
  });
  afterAll(() => shop.close());

  it.each(refused)('when %s', async (_, change, status, problem, pointer) => {
    const before = await tableHashes(shop.databaseUrl);
    const answer = await desk.send('POST', op.receiveUnit.path, { body: change(arrival) });
    expect([answer.status, answer.body.type]).toEqual([status, `/problems/${problem}`]);
    const errors = answer.body.errors as { pointer: string }[] | undefined;
    expect(errors?.[0]?.pointer).toBe(pointer);
    expect(await tableHashes(shop.databaseUrl)).toEqual(before);
  });

  it('says on which work order a unit is already', async () => {
    const { number } = await readsOf(shop).workOrder.findFirstOrThrow({ where: { unit: { serial: 'QP2001' } } });
    const answer = await desk.call(op.receiveUnit, arrival);
    expect(answer.body).toMatchObject({
      workOrder: { number, stage: 'received' },
      detail: expect.stringContaining(number),
    });
  });

  it('when another customer’s aircraft or another model’s application is named', async () => {
    const before = await tableHashes(shop.databaseUrl);
    const reads = readsOf(shop);
    const foreign = await reads.aircraft.findUniqueOrThrow({ where: { registration: 'ZZ-OVA' } });
    const other = await reads.application.findFirstOrThrow({ where: { model: { designation: 'Q2C-72' } } });
    const fresh = await threeBlade(shop, 'QP2997');
    const aircraft = await desk.call(op.receiveUnit, { ...fresh, aircraftId: foreign.id });
    expect([aircraft.body.type, aircraft.body.errors]).toMatchObject([
      '/problems/application-wrong',
      [{ pointer: '/aircraftId' }],
    ]);
    const application = await desk.call(op.receiveUnit, { ...fresh, applicationId: other.id });
    expect(application.body.errors).toMatchObject([{ pointer: '/applicationId' }]);
    expect(await tableHashes(shop.databaseUrl)).toEqual(before);
  });

  it.each(['parts-room', 'technician', 'inspector', 'administrator'])('when the %s tries', async (role) => {
    const visitor = await as(shop, role);
    const before = await tableHashes(shop.databaseUrl);
    const answer = await visitor.call(op.receiveUnit, await threeBlade(shop, 'QP2996'));
    expect([answer.status, answer.body.type]).toEqual([403, '/problems/not-permitted']);
    expect(await tableHashes(shop.databaseUrl)).toEqual(before);
  });

  it('when the inspector signs for what the desk changed meanwhile, or without having been authorised', async () => {
    const { id, version } = await readsOf(shop).workOrder.findFirstOrThrow({ where: { unit: { serial: 'QP2001' } } });
    const sign = { workOrderId: id, result: 'fine', signature: { pin: '2468' } };
    const inspector = await as(shop, 'inspector');
    const before = await tableHashes(shop.databaseUrl);
    const stale = await inspector.call(op.signPreliminaryInspection, sign, { version: version + 1 });
    expect([stale.status, stale.body.version]).toEqual([412, version]);
    const blind = await inspector.call(op.signPreliminaryInspection, sign);
    expect([blind.status, blind.body.type]).toEqual([428, '/problems/version-missing']);
    const forged = await inspector.call(
      op.signPreliminaryInspection,
      { ...sign, signature: { pin: '1111' } },
      { version },
    );
    expect([forged.status, forged.body.type]).toEqual([403, '/problems/signature-refused']);
    const late = { ...sign, performedAt: '2026-01-01T10:00:00Z' };
    const unexplained = await inspector.call(op.signPreliminaryInspection, late, { version });
    expect([unexplained.status, unexplained.body.type]).toEqual([422, '/problems/late-reason-missing']);
    expect(await tableHashes(shop.databaseUrl)).toEqual(before);
  });

  it('but the same serial under another part number is another unit', async () => {
    const reads = readsOf(shop);
    const model = await reads.unitModel.findFirstOrThrow({ where: { designation: 'VG14' } });
    const { aircraftId: _, applicationId: __, ...rest } = arrival;
    const governor = { ...rest, modelId: model.id, scope: 'governor' as const, parts: [], times: unknownTimes };
    expect((await desk.call(op.receiveUnit, governor)).status).toBe(200);
    const { body } = await desk.call(op.returningUnit, { serial: 'qp2001' });
    expect(body.rows.map((row) => row.partNumber).sort()).toEqual(['Q3C-76', 'VG14']);
  });
});
