import { unitOperations } from '@hubwright/contracts/units/operations';
import { workOrderOperations as op } from '@hubwright/contracts/work-orders/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readsOf, threeBlade, unknownTimes } from '../support/arrivals.ts';
import { as, pin } from '../support/people.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('a propeller arrives', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let inspector: Visitor;
  let first: { id: string; number: string };

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    desk = await as(shop, 'front-desk');
    inspector = await as(shop, 'inspector');
  });
  afterAll(() => shop.close());

  it('the desk books it in: a number, the current manual revision, a kit, and what is missing', async () => {
    const answer = await desk.call(op.receiveUnit, await threeBlade(shop, 'qp1001'));
    expect(answer.body).toMatchObject({ paperworkMissing: ['shipping-list'], prompts: [], version: 1 });
    first = answer.body;
    const { body } = await desk.call(op.workOrder, { workOrderId: first.id });
    expect(body).toMatchObject({
      stage: 'received',
      consent: 'estimate-due',
      ball: 'inspector',
      revision: { manual: 'QOM-301', revision: '5', state: 'current' },
      unit: { serial: 'QP1001', designation: 'Q3C-76' },
      times: { sinceNewTenths: 21_004, sinceOverhaulTenths: 18_231, meter: 'tachometer', meterTenths: 28_401 },
      aircraft: { registration: 'ZZ-BMD' },
      application: { position: 'single' },
    });
    expect(body.parts.map((part) => [part.position, part.serial, part.times?.sinceNewTenths])).toEqual([
      ['blade 1', 'B1-QP1001', 'unknown'],
      ['blade 2', 'B2-QP1001', 'unknown'],
      ['blade 3', 'B3-QP1001', 'unknown'],
      ['hub', 'H-QP1001', 'unknown'],
    ]);
    expect(body.kit).toMatchObject({ pulled: 0, promised: 0 });
    expect(body.kit?.newLines).toBeGreaterThan(10);
    expect(body.openItems.map((item) => item.what)).toContain('6 × mounting nuts goes back');
  });

  it('stands first on the desk’s board until an inspector has looked', async () => {
    const before = await desk.call(op.deskBoard, {});
    expect(before.body.notLookedAt.map((unit) => unit.workOrder.number)).toContain(first.number);
    const { body: seen } = await inspector.call(op.workOrder, { workOrderId: first.id });
    const signed = await inspector.call(
      op.signPreliminaryInspection,
      { workOrderId: first.id, result: 'as booked in, crate intact', signature: pin },
      { version: seen.version },
    );
    expect(signed.status).toBe(200);
    const { body } = await desk.call(op.workOrder, { workOrderId: first.id });
    expect(body.preliminaryInspection).toMatchObject({ person: 'Bram Ostler', result: 'as booked in, crate intact' });
    expect(body.preliminaryInspection?.contentHash).toMatch(/^[0-9a-f]{64}$/);
    expect(body.ball).toBe('front-desk');
    const after = await desk.call(op.deskBoard, {});
    expect(after.body.notLookedAt.map((unit) => unit.workOrder.number)).not.toContain(first.number);
    expect(after.body.toWrite).toContainEqual(
      expect.objectContaining({ kind: 'estimate', workOrder: { id: first.id, number: first.number } }),
    );
    const held = await readsOf(shop).signOff.findUniqueOrThrow({ where: { id: signed.body.signOffId } });
    expect(held).toMatchObject({
      subjectKind: 'work-order',
      meaning: op.signPreliminaryInspection.signs,
      authorisation: { process: 'receiving-inspection', level: 'inspect' },
    });
  });

  it('takes what nobody can read yet under a name of its own, and names it as open', async () => {
    const arrival = await threeBlade(shop, 'QP1002');
    const answer = await desk.call(op.receiveUnit, {
      ...arrival,
      serial: null,
      times: unknownTimes,
      parts: arrival.parts.map((part) => ({ ...part, serial: part.kind === 'blade' ? null : part.serial })),
    });
    const { number } = answer.body;
    const { body } = await desk.call(op.workOrder, { workOrderId: answer.body.id });
    expect(body.unit).toMatchObject({ serial: null, provisionalName: `unit of ${number}` });
    expect(body.times).toMatchObject({ sinceNewTenths: 'unknown', sinceOverhaulTenths: 'unknown', meter: null });
    const unread = body.openItems.filter((item) => item.what.includes('is not read yet'));
    expect(unread).toHaveLength(4);
    const blade = body.parts.find((part) => part.position === 'blade 1');
    const read = await inspector.call(
      unitOperations.confirmIdentity,
      { itemId: blade?.id ?? '', serial: 'b1 qp1002', signature: pin },
      { version: blade?.version ?? 0 },
    );
    expect(read.status).toBe(200);
    const after = await desk.call(op.workOrder, { workOrderId: answer.body.id });
    expect(after.body.parts.find((part) => part.position === 'blade 1')?.serial).toBe('B1 QP1002');
  });

  it('after a strike asks for engine and governor, and for hidden damage in the inspector’s own words', async () => {
    const answer = await desk.call(
      op.receiveUnit,
      await threeBlade(shop, 'QP1003', { events: ['strike'], scope: 'strike-inspection' }),
    );
    expect(answer.body.prompts).toHaveLength(2);
    const sign = (hiddenDamage: string) =>
      inspector.call(
        op.signPreliminaryInspection,
        { workOrderId: answer.body.id, result: 'two blades bent', hiddenDamage, signature: pin },
        { version: 1 },
      );
    expect((await sign('')).body).toMatchObject({
      type: '/problems/hidden-damage-unsaid',
      errors: [{ pointer: '/hiddenDamage' }],
    });
    expect((await sign('hub bores and blade shanks looked at; scoring at blade 2')).status).toBe(200);
  });

  it('an investigator’s hold stops the inspector until the manager lifts it', async () => {
    const { body } = await desk.call(
      op.receiveUnit,
      await threeBlade(shop, 'QP1004', { accidentHold: 'insurer’s adjuster has not seen it' }),
    );
    const sign = (version: number) =>
      inspector.call(
        op.signPreliminaryInspection,
        { workOrderId: body.id, result: 'looked at', signature: pin },
        { version },
      );
    expect((await sign(1)).body).toMatchObject({ type: '/problems/work-held', holds: [{ liftedByRole: 'manager' }] });
    const holds = await desk.call(op.listHolds, { liftedByRole: 'manager' });
    const hold = holds.body.rows.find((row) => row.workOrder.id === body.id);
    const lift = { holdId: hold?.id ?? '', reason: 'adjuster came and agreed' };
    expect((await desk.call(op.liftHold, lift)).body).toMatchObject({
      type: '/problems/not-yours-to-lift',
      role: 'manager',
    });
    const manager = await as(shop, 'manager');
    const lifted = await manager.call(op.liftHold, lift);
    expect(lifted.status).toBe(200);
    expect((await manager.call(op.liftHold, lift)).body.type).toBe('/problems/hold-lifted');
    expect((await sign(lifted.body.version)).status).toBe(200);
  });

  it('is found again by any piece of its number, serial, blade or customer', async () => {
    for (const search of [first.number, 'p1001', 'b2-qp1001', 'brackenmoor']) {
      const { body } = await desk.call(op.listWorkOrders, { search, limit: 200 });
      expect(body.rows.map((row) => row.id)).toContain(first.id);
    }
    const none = await desk.call(op.listWorkOrders, { search: '%', limit: 200 });
    expect(none.body.rows).toEqual([]);
  });

  it('pages through the list without losing or repeating one', async () => {
    const whole = await desk.call(op.listWorkOrders, { limit: 200 });
    const paged: string[] = [];
    for (let after: string | null | undefined; after !== null; ) {
      const page = await desk.call(op.listWorkOrders, { limit: 2, ...(after ? { after } : {}) });
      paged.push(...page.body.rows.map((row) => row.number));
      after = page.body.next;
    }
    expect(paged).toEqual(whole.body.rows.map((row) => row.number));
    expect(new Set(paged).size).toBe(paged.length);
  });

  it('carries a promise, which moves only with a reason and never into the past', async () => {
    const { body } = await desk.call(op.workOrder, { workOrderId: first.id });
    const promise = (promisedOn: string, version: number) =>
      desk.call(op.setPromise, { workOrderId: first.id, promisedOn, reason: 'customer asked' }, { version });
    expect((await promise('2020-01-01', body.version)).body.type).toBe('/problems/promise-in-past');
    expect((await promise('2099-01-01', body.version)).status).toBe(200);
    const stale = await promise('2099-02-01', body.version);
    expect([stale.status, stale.body.type, stale.body.version]).toEqual([
      412,
      '/problems/out-of-date',
      body.version + 1,
    ]);
    const manager = await as(shop, 'manager');
    const board = await manager.call(op.managerBoard, {});
    expect(board.body.units.find((unit) => unit.workOrder.id === first.id)).toMatchObject({
      promisedOn: '2099-01-01',
      late: false,
      heldBy: ['Estimate to write'],
      ball: 'front-desk',
      daysInHouse: 0,
    });
  });
});
