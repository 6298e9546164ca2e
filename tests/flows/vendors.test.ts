import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { addDays } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { threeBladeContent } from '../support/manual-content.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { sendToVendor, takeBack, changeExpected, listVendorOrders, outsideWork } = vendorOperations;

/** The hub is plated by a vendor; its pitch-change spring goes along. */
describe('a part out at a vendor', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let clerk: Visitor;
  let inspector: Visitor;
  let technician: Visitor;
  let job: Job;
  let stepId: string;
  let piece: { lotId: string; quantity: number };
  let supplierId: string;
  const today = () => day(0, clock.now());
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    await signIn();
    job = await Job.arrived(shop, 'QR9000');
    const { revisionId, modelId } = await job.workOrder();
    const { manualId } = await job.reads.manualRevision.findUniqueOrThrow({ where: { id: revisionId } });
    const content = await threeBladeContent(shop);
    const routes = content.routes.map((route) => ({
      ...route,
      steps: route.steps.map((step) => ({ ...step, outside: step.title === 'Plate and bake' })),
    }));
    const models = [{ ...content, routes, modelId, tboRules: [] }];
    await shop.run(
      issueRevision,
      { manualId, revision: '9', issuedOn: '2026-06-01', models } as never,
      job.people.inspector,
    );
    job = await Job.arrived(shop, 'QR9001');
    await job.tornDown();
    await job.takenOff();
    await job.signed('evaluation');
    await job.approved('firm');
    await job.sign(await job.nextAt('hub'));
    stepId = (await job.nextAt('hub')).id;
    const lot = await job.reads.lot.findFirstOrThrow({
      where: { workOrderId: job.id, origin: 'taken-off', balances: { some: { placeKind: 'rack' } } },
      include: { balances: true },
    });
    piece = { lotId: lot.id, quantity: lot.balances.find(({ placeKind }) => placeKind === 'rack')?.onHand ?? 0 };
    supplierId = (await job.reads.supplier.findFirstOrThrow({ where: { approvedUntil: { gte: clock.now() } } })).id;
  }, 180_000);
  afterAll(() => shop.close());

  const signIn = async () => {
    [clerk, inspector] = [await as(shop, 'parts-room'), await as(shop, 'inspector')];
    technician = await as(shop, 'technician');
  };
  /** Days pass; everyone signs in again. */
  const pass = async (days: number) => {
    clock.seconds += days * 24 * 3600;
    await signIn();
  };
  const order = (changes: object = {}) => ({
    ...{ supplierId, purchaseOrder: 'PO-V-118', paperDue: 'certificate with the bake chart' },
    ...{ expectedOn: addDays(today(), 5), stepIds: [stepId], pieces: [piece] },
    ...changes,
  });
  const out = async (state: 'out' | 'late' | 'back' = 'out') =>
    (await clerk.call(listVendorOrders, { state, limit: 50 })).body.rows;
  const refused = (input: ReturnType<typeof order>, status: number, type: string) =>
    expectRefused({ shop, visitor: clerk }, { operation: sendToVendor, input }, { status, type });
  const blocked = async () => {
    const { travelerId } = await job.nextAt('hub');
    const { steps } = (await technician.call(travelerOperations.traveler, { travelerId })).body;
    return steps.find(({ id }) => id === stepId)?.blocked;
  };
  const signing = () => ({ operation: travelerOperations.signStep, input: { stepId, values: [], signature: pin } });

  it('is listed as waiting to go, and its step cannot be signed in the shop', async () => {
    const { rows } = (await clerk.call(outsideWork, {})).body;
    expect(rows).toMatchObject([{ stepId, work: 'Plate and bake', blocked: null }]);
    await expectRefused({ shop, visitor: technician }, signing(), { status: 409, type: 'not-back-from-vendor' });
    expect((await blocked())?.detail).toContain('has not been sent yet');
  });

  it('does not go to a vendor nobody approved, for work of the shop, or for a day that is over', async () => {
    const other = await job.reads.supplier.findFirst({ where: { approvedUntil: null } });
    const lapsed = addDays(today(), 20_000);
    await refused(order({ expectedOn: lapsed }), 409, 'vendor-not-approved');
    if (other) await refused(order({ supplierId: other.id }), 409, 'vendor-not-approved');
    await refused(order({ expectedOn: addDays(today(), -1) }), 422, 'expected-in-past');
    await refused(order({ stepIds: [(await job.nextAt('blade 1')).id] }), 409, 'not-outside-work');
    await refused(order({ pieces: [{ ...piece, quantity: 9_999 }] }), 409, 'not-enough');
  });

  it('goes out once, with its pieces through the ledger, and is named where it is', async () => {
    const sent = await clerk.call(sendToVendor, order());
    expect([sent.status, sent.body.number]).toEqual([200, 'VO-0001']);
    expect(await out()).toMatchObject([
      { number: 'VO-0001', state: 'out', daysLate: 0, lines: [{ stepId, condition: null }], pieces: [piece] },
    ]);
    await refused(order({ pieces: [] }), 409, 'already-out');
    expect((await blocked())?.detail).toContain('on VO-0001, expected back on');
    expect(await job.reads.balance.findMany({ where: { lotId: piece.lotId, onHand: { gt: 0 } } })).toMatchObject([
      { placeKind: 'vendor', onHand: piece.quantity },
    ]);
    expect(await ledgerFaults(shop.databaseUrl)).toEqual([]);
  });

  it('is late from the day after its day, until the vendor promises another', async () => {
    await pass(5);
    expect(await out('late')).toEqual([]);
    await pass(2);
    const [late] = await out('late');
    expect(late?.daysLate).toBe(2);
    const input = { orderId: late?.id ?? '', expectedOn: addDays(today(), 3), reason: 'bath was out of limits' };
    expect((await clerk.call(changeExpected, input, { version: 1 })).status).toBe(200);
    expect(await out('late')).toEqual([]);
  });

  it('is not taken back as good without the paper that had to come', async () => {
    const [at] = await out();
    const lines = [{ lineId: at?.lines[0]?.id ?? '', condition: 'good' as const }];
    const input = { orderId: at?.id ?? '', lines, certificate: 'SP-5521', paperCame: false, signature: pin };
    await expectRefused(
      { shop, visitor: inspector },
      { operation: takeBack, input, options: { version: 2 } },
      { status: 409, type: 'paper-missing', pointer: '/paperCame' },
    );
    await expectRefused(
      { shop, visitor: clerk },
      { operation: takeBack, input, options: { version: 2 } },
      { status: 403, type: 'not-permitted' },
    );
  });

  it('that came back damaged goes out again', async () => {
    const [at] = await out();
    const lines = [{ lineId: at?.lines[0]?.id ?? '', condition: 'damaged' as const, note: 'dropped' }];
    const input = {
      orderId: at?.id ?? '',
      lines,
      certificate: 'none',
      paperCame: false,
      pieces: [piece],
      signature: pin,
    };
    const back = await inspector.call(takeBack, input, { version: 2 });
    expect(back.body).toMatchObject({ state: 'back', refused: 1 });
    expect((await blocked())?.detail).toContain('damaged');
    expect((await clerk.call(sendToVendor, order({ pieces: [] }))).body.number).toBe('VO-0002');
  });

  it('that came back good is signed, under the receiving inspection', async () => {
    const [at] = await out();
    const lines = [{ lineId: at?.lines[0]?.id ?? '', condition: 'good' as const }];
    const input = { orderId: at?.id ?? '', lines, certificate: 'SP-5530', paperCame: true, signature: pin };
    expect((await inspector.call(takeBack, input, { version: 1 })).body.state).toBe('back');
    await expectRefused(
      { shop, visitor: inspector },
      { operation: takeBack, input, options: { version: 2 } },
      { status: 409, type: 'nothing-came-back' },
    );
    const signOff = await job.reads.signOff.findFirstOrThrow({
      where: { workOrderId: job.id, subjectKind: 'vendor-line', result: 'pass' },
    });
    expect(JSON.parse(signOff.content)).toMatchObject({ order: 'VO-0002', certificate: 'SP-5530', condition: 'good' });
    expect((await technician.call(travelerOperations.signStep, signing().input)).status).toBe(200);
    expect(await out()).toEqual([]);
    expect(await ledgerFaults(shop.databaseUrl)).toEqual([]);
  });
});
