// size: one story told in order; each step stands on the one before
import { findingOperations } from '@hubwright/contracts/findings/operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { lossOperations } from '@hubwright/contracts/vendors/loss-operations';
import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { vendorPieceOperations } from '@hubwright/contracts/vendors/piece-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { addDays } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { threeBladeContent } from '../support/manual-content.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { sendToVendor, takeBack, listVendorOrders, outsideWork } = vendorOperations;
const { writeOffPieces, writeOffPart, listVendorLosses } = lossOperations;
const { takeBackPieces } = vendorPieceOperations;

/** The hub goes to a vendor with two lots of its rack: one comes back late, of the other a piece is lost, and then the hub itself. */
describe('what a vendor loses', () => {
  let shop: ShopApp;
  let clerk: Visitor;
  let inspector: Visitor;
  let technician: Visitor;
  let job: Job;
  let stepId: string;
  let supplierId: string;
  let lost: { lotId: string; quantity: number; code: string; lineId: string };
  let late: typeof lost;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [clerk, inspector, technician] = [
      await as(shop, 'parts-room'),
      await as(shop, 'inspector'),
      await as(shop, 'technician'),
    ];
    job = await Job.arrived(shop, 'QW9000');
    const { revisionId, modelId } = await job.workOrder();
    const { manualId } = await job.reads.manualRevision.findUniqueOrThrow({ where: { id: revisionId } });
    const content = await threeBladeContent(shop);
    const routes = content.routes.map((route) => ({
      ...route,
      steps: route.steps.map((step) => ({ ...step, outside: step.title === 'Plate and bake' })),
    }));
    const models = [{ ...content, routes, modelId, tboRules: [] }];
    const revision = { manualId, revision: '9', issuedOn: '2026-06-01', models };
    await shop.run(issueRevision, revision as never, job.people.inspector);
    job = await Job.arrived(shop, 'QW9001');
    await job.tornDown();
    await job.takenOff();
    await job.signed('evaluation');
    await job.approved('firm');
    await job.sign(await job.nextAt('hub'));
    stepId = (await job.nextAt('hub')).id;
    [lost, late] = (await reused()) as [typeof lost, typeof lost];
    supplierId = (await job.reads.supplier.findFirstOrThrow({ where: { approvedUntil: { gte: new Date() } } })).id;
  }, 180_000);
  afterAll(() => shop.close());

  /** Lots of the rack that go back into the unit. */
  const reused = async () => {
    const { rows } = { rows: (await kit()).lines.filter(({ source }) => source !== 'new') };
    const rack = (await technician.call(kitsOperations.buildSheet, { workOrderId: job.id })).body.rack;
    return rows.flatMap(({ id: lineId }) =>
      rack
        .filter((lot) => lot.lineId === lineId)
        .map(({ lotId, lotCode: code, quantity }) => ({ lotId, quantity, code, lineId })),
    );
  };
  const kit = async () => (await clerk.call(kitsOperations.kitDetail, { kitId: job.kitId })).body;
  const order = (changes: object = {}) => ({
    ...{ supplierId, purchaseOrder: 'PO-V-118', paperDue: 'certificate', expectedOn: addDays(day(0), 5) },
    ...{ stepIds: [stepId], pieces: [lost, late].map(({ lotId, quantity }) => ({ lotId, quantity })), ...changes },
  });
  const out = async () => (await clerk.call(listVendorOrders, { state: 'out', limit: 50 })).body.rows;
  const first = async () => {
    const [at] = await out();
    if (!at) throw new Error('Nothing is out');
    return at;
  };
  const told = {
    how: 'lost' as const,
    vendorPaper: 'Letter 44 of the vendor',
    reason: 'the box broke open on the way',
  };
  const loss = async (changes: object = {}) => ({
    ...{
      orderId: (await first()).id,
      pieces: [{ lotId: lost.lotId, quantity: lost.quantity }],
      ...told,
      signature: pin,
    },
    ...{ witnessId: job.people.technician.personId, witnessSignature: pin, ...changes },
  });
  const version = async () => ({ version: (await first()).version });
  const open = async () => (await inspector.call(releaseOperations.releaseChecklist, { workOrderId: job.id })).body;
  const refusedLoss = async (changes: object, status: number, type: string) =>
    expectRefused(
      { shop, visitor: clerk },
      { operation: writeOffPieces, input: await loss(changes), options: await version() },
      { status, type },
    );

  it('goes out with pieces that no longer lie in the rack, and that stock is not asked for', async () => {
    const asked = (await kit()).lines.map(({ id, toPull }) => [id, toPull]);
    expect((await clerk.call(sendToVendor, order())).status).toBe(200);
    const { rack } = (await technician.call(kitsOperations.buildSheet, { workOrderId: job.id })).body;
    expect(rack.filter(({ lotId }) => [lost.lotId, late.lotId].includes(lotId))).toEqual([]);
    expect((await kit()).lines.map(({ id, toPull }) => [id, toPull])).toEqual(asked);
    expect(await ledgerFaults(shop.databaseUrl)).toEqual([]);
  });

  it('is not written off by the wrong person, unseen, twice in one form, beyond what is out or without the vendor’s paper', async () => {
    await refusedLoss({ witnessId: job.people.clerk.personId }, 409, 'second-person-needed');
    await refusedLoss({ pieces: [{ lotId: lost.lotId, quantity: lost.quantity + 1 }] }, 409, 'not-enough');
    await refusedLoss({ pieces: [] }, 422, 'invalid-input');
    const twice = { lotId: lost.lotId, quantity: 1 };
    await refusedLoss({ pieces: [twice, twice] }, 422, 'invalid-input');
    await refusedLoss({ vendorPaper: ' ' }, 422, 'invalid-input');
    await refusedLoss({ pieces: [{ lotId: stepId, quantity: 1 }] }, 409, 'piece-not-with-it');
    await refusedLoss({ orderId: stepId }, 404, 'not-found');
    await expectRefused(
      { shop, visitor: technician },
      { operation: writeOffPieces, input: await loss(), options: await version() },
      { status: 403, type: 'not-permitted' },
    );
  });

  it('of pieces: the ledger moves them to where nothing comes back from, the position asks for new ones, the owner is named', async () => {
    const { name } = await job.reads.customer.findUniqueOrThrow({ where: { id: (await job.workOrder()).customerId } });
    const done = await clerk.call(writeOffPieces, await loss(), await version());
    expect(done.body).toMatchObject({ state: 'out', owners: [name], asked: lost.quantity });
    expect(await job.reads.balance.findMany({ where: { lotId: lost.lotId, onHand: { gt: 0 } } })).toMatchObject([
      { placeKind: 'lost', placeRef: supplierId, onHand: lost.quantity },
    ]);
    expect((await first()).pieces).toMatchObject([{ lotId: late.lotId }]);
    const short = (await kit()).lines.filter(({ id }) => id === lost.lineId);
    expect(short).toMatchObject([{ source: 'new', toPull: lost.quantity }]);
    const { rows } = (await clerk.call(listVendorLosses, { workOrderId: job.id })).body;
    expect(rows).toMatchObject([
      {
        ...told,
        quantity: lost.quantity,
        owner: name,
        lot: { code: lost.code },
        order: 'VO-0001',
        witness: expect.any(String),
      },
    ]);
    expect((await clerk.call(listVendorLosses, { unitId: job.unitId })).body.rows).toEqual(rows);
    const movements = (await clerk.call(inventoryOperations.listMovements, { lotId: lost.lotId, limit: 5 })).body.rows;
    expect(movements[0]?.to.title).toMatch(/^lost at /);
    const signed = await job.reads.stockSignature.findMany({ where: { lotId: lost.lotId }, orderBy: { role: 'asc' } });
    expect(signed.map(({ role, kind }) => [role, kind])).toEqual([
      ['signer', 'lost-at-vendor'],
      ['witness', 'lost-at-vendor'],
    ]);
    expect(await ledgerFaults(shop.databaseUrl)).toEqual([]);
  });

  it('is not undone in the ledger, and not lost twice', async () => {
    const movement = await job.reads.movement.findFirstOrThrow({ where: { lotId: lost.lotId, toKind: 'lost' } });
    const { version: seen } = await job.reads.lot.findUniqueOrThrow({ where: { id: lost.lotId } });
    await expectRefused(
      { shop, visitor: clerk },
      {
        operation: inventoryOperations.reverseMovement,
        input: { movementId: movement.id, reason: 'by mistake' },
        options: { version: seen },
      },
      { status: 409, type: 'cannot-reverse' },
    );
    await refusedLoss({}, 409, 'not-enough');
  });

  it('keeps the release shut while what it took from the unit is missing', async () => {
    const { open: items, ready } = await open();
    const part = await job.reads.lot.findUniqueOrThrow({ where: { id: lost.lotId }, include: { part: true } });
    expect(ready).toBe(false);
    expect(items.map(({ what }) => what).join('\n')).toContain(part.part.number);
    await expectRefused(
      { shop, visitor: inspector },
      {
        operation: releaseOperations.approveRelease,
        input: { workOrderId: job.id, signature: pin },
        options: { version: (await job.workOrder()).version },
      },
      { status: 409, type: 'release-blocked' },
    );
  });

  it('brings pieces back after their part was inspected: not without the paper, then into the rack', async () => {
    const at = await first();
    const line = { lineId: at.lines[0]?.id ?? '', condition: 'damaged' as const, note: 'dropped' };
    const part = { orderId: at.id, lines: [line], certificate: 'none', paperCame: false, pieces: [], signature: pin };
    expect((await inspector.call(takeBack, part, { version: at.version })).body).toMatchObject({ state: 'out' });
    const piece = { lotId: late.lotId, quantity: late.quantity, condition: 'good' as const };
    const input = { orderId: at.id, pieces: [piece], certificate: 'SP-9', paperCame: false, signature: pin };
    const refused = (changes: object, status: number, type: string, visitor = inspector) =>
      expectRefused(
        { shop, visitor },
        { operation: takeBackPieces, input: { ...input, ...changes }, options: { version: at.version + 1 } },
        { status, type },
      );
    await refused({}, 409, 'paper-missing');
    await refused({ paperCame: true, pieces: [{ ...piece, quantity: late.quantity + 1 }] }, 409, 'not-enough');
    await refused({ paperCame: true, pieces: [{ ...piece, lotId: lost.lotId }] }, 409, 'not-enough');
    await refused({ paperCame: true }, 403, 'not-permitted', clerk);
    const came = await inspector.call(takeBackPieces, { ...input, paperCame: true }, { version: at.version + 1 });
    expect(came.body).toMatchObject({ state: 'back', refused: 0, held: 0 });
    const { rack } = (await technician.call(kitsOperations.buildSheet, { workOrderId: job.id })).body;
    expect(rack.find(({ lotId }) => lotId === late.lotId)).toMatchObject({
      lineId: late.lineId,
      quantity: late.quantity,
    });
    await expectRefused(
      { shop, visitor: inspector },
      { operation: takeBackPieces, input: { ...input, paperCame: true }, options: { version: at.version + 2 } },
      { status: 409, type: 'nothing-came-back' },
    );
    expect(await ledgerFaults(shop.databaseUrl)).toEqual([]);
  });

  it('sends pieces without a part, and what comes back bad waits for an inspector again', async () => {
    const pass = { kitId: job.kitId, lotId: late.lotId, signature: pin };
    expect((await inspector.call(kitsOperations.passRackPart, pass)).status).toBe(200);
    await expectRefused(
      { shop, visitor: clerk },
      { operation: sendToVendor, input: order({ stepIds: [], pieces: [] }) },
      { status: 422, type: 'nothing-named', pointer: '/stepIds' },
    );
    const alone = order({ stepIds: [], pieces: [{ lotId: late.lotId, quantity: late.quantity }] });
    expect((await clerk.call(sendToVendor, alone)).status).toBe(200);
    const at = await first();
    expect(at).toMatchObject({ lines: [], pieces: [{ lotId: late.lotId }] });
    const piece = { lotId: late.lotId, quantity: late.quantity, condition: 'damaged' as const, note: 'scratched' };
    const input = { orderId: at.id, pieces: [piece], certificate: 'SP-10', paperCame: false, signature: pin };
    const came = await inspector.call(takeBackPieces, input, { version: at.version });
    expect(came.body).toMatchObject({ state: 'back', refused: 1 });
    const lot = await job.reads.lot.findUniqueOrThrow({ where: { id: late.lotId } });
    expect(lot.state).toBe('quarantine');
    const reuse = { kitId: job.kitId, lineId: late.lineId, lotCode: late.code };
    await expectRefused(
      { shop, visitor: technician },
      { operation: kitsOperations.reuseFromRack, input: reuse },
      { status: 409, type: 'not-passed' },
    );
  });

  it('of the part itself: its step is never signed and it is not sent again, until a finding rejects it', async () => {
    expect((await clerk.call(sendToVendor, order({ pieces: [] }))).status).toBe(200);
    const at = await first();
    const input = { orderId: at.id, lineId: at.lines[0]?.id ?? '', ...told, how: 'destroyed' as const, signature: pin };
    await expectRefused(
      { shop, visitor: clerk },
      { operation: writeOffPart, input, options: { version: at.version } },
      { status: 403, type: 'not-permitted' },
    );
    const done = await inspector.call(writeOffPart, input, { version: at.version });
    expect(done.body).toMatchObject({ state: 'back' });
    await expectRefused(
      { shop, visitor: inspector },
      { operation: writeOffPart, input, options: { version: at.version + 1 } },
      { status: 409, type: 'nothing-came-back' },
    );
    expect((await clerk.call(outsideWork, {})).body.rows).toEqual([]);
    await expectRefused(
      { shop, visitor: clerk },
      { operation: sendToVendor, input: order({ pieces: [] }) },
      { status: 409, type: 'lost-at-vendor' },
    );
    await expectRefused(
      { shop, visitor: technician },
      { operation: travelerOperations.signStep, input: { stepId, values: [], signature: pin } },
      { status: 409, type: 'not-back-from-vendor' },
    );
    expect((await clerk.call(listVendorLosses, { workOrderId: job.id })).body.rows).toMatchObject([
      { how: 'destroyed', position: 'hub', lot: null, quantity: 1, witness: null },
      { how: 'lost' },
    ]);
    expect((await open()).open.some(({ what }) => what.includes('Plate and bake'))).toBe(true);
  });

  it('and after it was rejected the empty position keeps the release shut until a replacement is in', async () => {
    const { travelerId } = await job.reads.travelerStep.findUniqueOrThrow({ where: { id: stepId } });
    const found = {
      area: 'outside',
      damage: 'missing' as const,
      place: 'all of it',
      description: 'lost at the vendor',
    };
    const raised = await inspector.call(findingOperations.raiseFinding, { travelerId, ...found });
    const decision = { findingId: raised.body.id, disposition: 'reject' as const, signature: pin };
    const { version: seen } = raised.body;
    const decided = await inspector.call(findingOperations.disposeFinding, decision as never, { version: seen });
    expect(decided.status).toBe(200);
    const positions = async () => (await open()).open.filter(({ kind }) => kind === 'position').map(({ what }) => what);
    expect(await positions()).toEqual([`${raised.body.number}: nothing is on record at hub`]);
    const replacement = { maker: 'Quillon', partNumber: 'QH-3000', serial: 'QH-NEW-1' };
    const times = { sinceNewTenths: 0, sinceOverhaulTenths: 0, sinceNewCycles: 0 };
    const fitted = { findingId: raised.body.id, ...replacement, ...times };
    expect((await technician.call(findingOperations.fitReplacement, fitted as never)).status).toBe(200);
    expect(await positions()).toEqual([]);
  });
});
