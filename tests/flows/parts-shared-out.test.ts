import { allocationOperations } from '@hubwright/contracts/kits/allocation-operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { promiseOperations } from '@hubwright/contracts/kits/promise-operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { as } from '../support/people.ts';
import type { Visitor } from '../support/shop-app.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';

const { kitsToFill, acceptFill, allocationPolicy, changeAllocationPolicy } = allocationOperations;
const { lotServes, orderServes, whatIf, moveLotToKit, freezeReservation, unfreezeReservation } = promiseOperations;

/** Two units wait for the only seal: who gets it, why, and what if not. */
describe('parts shared out between kits', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let [soon, later]: KitOf[] = [];
  let seal: { id: string; code: string };
  beforeAll(async () => {
    room = await Stockroom.open();
    clerk = await as(room.shop, 'parts-room');
    const customer = await room.customer('SHARE', ['maker-new']);
    [soon, later] = [await room.kit('P-1', customer), await room.kit('P-2', customer)];
    await needBy(soon, 5);
    await room.onShelf('washer', 10);
    await room.onShelf('wire', 200);
    seal = await room.onShelf('seal', 1);
  });
  afterAll(() => room.close());

  async function needBy(kit: KitOf | undefined, days: number) {
    const { body } = await clerk.call(kitsOperations.kitDetail, { kitId: kit?.kitId ?? '' });
    const date = { kitId: body.id, needBy: room.day(days) };
    expect((await clerk.call(kitsOperations.setNeedBy, date, { version: body.version })).status).toBe(200);
  }
  const id = (kit: KitOf | undefined) => kit?.kitId ?? '';
  const proposal = async () => (await clerk.call(kitsToFill, {})).body;
  const lineOf = async (kit: KitOf | undefined, position: string) =>
    (await clerk.call(kitsOperations.kitDetail, { kitId: id(kit) })).body.lines.find(
      (line) => line.position === position,
    );
  const asAccepted = ({ kits }: Awaited<ReturnType<typeof proposal>>) => ({
    kits: kits.map(({ kitId, version, picks }) => ({
      kitId,
      version,
      picks: picks.map(({ lineId, lotId, quantity }) => ({ lineId, lotId, quantity })),
    })),
  });

  it('proposes the kit whose delay costs more, proves it, and says what the other one loses to it', async () => {
    const { kits, isBest, proof, value, bound, leftOut: others } = await proposal();
    const leftOut = (await clerk.call(allocationOperations.kitsLeftOut, {})).body.rows;
    expect(others).toBe(leftOut.length);
    expect(kits.map(({ code, daysAvoided }) => [code, daysAvoided])).toEqual([['KIT-0001', 5]]);
    expect(kits[0]?.why).toContain(`new ones would be here on ${room.day(10)}; it is needed ${room.day(5)}`);
    expect(kits[0]?.why).toContain('Counted at 90 %');
    expect(kits[0]?.picks.map(({ part, quantity, bin }) => [part.number, quantity, bin])).toEqual([
      ['TW-10', 2, 'B-01'],
      ['TS-20', 1, 'B-01'],
      ['TX-50', 40, 'B-01'],
    ]);
    expect([isBest, bound]).toEqual([true, value]);
    expect(proof).toContain('Best possible');
    expect(leftOut).toMatchObject([{ code: 'KIT-0002', isOutbid: true, lacks: [{ quantity: 1 }] }]);
    expect(leftOut[0]?.cause).toContain('1 × TS-20');
    expect(leftOut[0]?.cause).toContain('KIT-0001');
  });

  it('offers nothing that is another customer’s, waits in quarantine or expires before the build', async () => {
    const other = await room.customer('OTHER', ['maker-new', 'customer-supplied']);
    await room.onShelf('seal', 1, { sourceClass: 'customer-supplied', customerId: other });
    await room.received('seal', 1);
    await room.onShelf('seal', 1, { cureDate: room.day(-1750) });
    expect((await proposal()).kits.map(({ code }) => code)).toEqual(['KIT-0001']);
  });

  it('says both ways what covers a line and what a lot or an order serves', async () => {
    const supplierId = (await room.reads.supplier.findUniqueOrThrow({ where: { code: 'HARROW' } })).id;
    const lines = [{ partId: room.part('seal'), quantity: 5, dueOn: room.day(20) }];
    const order = (await clerk.call(purchasingOperations.raiseOrder, { supplierId, lines })).body;
    expect((await lineOf(soon, 'drive'))?.pegs).toMatchObject([{ kind: 'lot', code: seal.code }]);
    const lot = (await clerk.call(lotServes, { lotId: seal.id })).body;
    expect(lot).toMatchObject({ free: 0, rows: [{ kitCode: 'KIT-0001', how: 'counted-on', quantity: 1, likely: 90 }] });
    // Another seal waits in quarantine for the second kit, so nobody waits for the order yet.
    const { body } = await clerk.call(orderServes, { orderId: order.id as string });
    expect(body.lines).toMatchObject([{ rows: [], free: 5 }]);
    expect((await clerk.call(orderServes, { orderId: seal.id })).status).toBe(404);
  });

  it('answers what would become of the others, and changes nothing by it', async () => {
    const asked = { lotId: seal.id, kitId: id(later) };
    const answer = await clerk.call(whatIf, asked);
    expect(answer.body).toMatchObject({ kitCode: 'KIT-0002', quantity: 1, takenFrom: [], helped: [] });
    // The quarantined seal serves whoever comes first now, so the early kit stays in time.
    expect(answer.body.summary).toContain('none late');
    expect(await room.reads.reservation.count()).toBe(0);
  });

  it('accepts a proposal whole and once, and refuses it when something moved meanwhile', async () => {
    const seen = asAccepted(await proposal());
    await needBy(soon, 4);
    const stale = await clerk.call(acceptFill, seen);
    expect(stale.body).toMatchObject({ type: '/problems/proposal-moved', detail: 'KIT-0001 was changed.' });
    const fresh = asAccepted(await proposal());
    const doubled = { kits: fresh.kits.map((kit) => ({ ...kit, picks: [...kit.picks, ...kit.picks.slice(0, 1)] })) };
    expect((await clerk.call(acceptFill, doubled)).body.type).toBe('/problems/proposal-moved');
    expect(await room.reads.reservation.count()).toBe(0);
    const key = 'accept-once-and-for-all';
    const first = await clerk.call(acceptFill, fresh, { key });
    expect(first.body).toEqual({ kits: 1, lines: 3 });
    expect((await clerk.call(acceptFill, fresh, { key })).body).toEqual(first.body);
    expect(await room.reads.reservation.count()).toBe(3);
    expect((await clerk.call(acceptFill, fresh)).body.type).toBe('/problems/proposal-moved');
    expect((await proposal()).promised).toBe(1);
  });

  it('takes an ordinary promise for another kit where somebody says why, and names who becomes late', async () => {
    await room.sql("UPDATE lots SET state = 'rejected' WHERE state = 'quarantine'");
    const asked = { lotId: seal.id, kitId: id(later) };
    await clerk.call(changeAllocationPolicy, await sameAgain('read anew'), { version: 0 });
    const { body } = await clerk.call(whatIf, asked);
    expect(body.takenFrom).toMatchObject([{ kitCode: 'KIT-0001', quantity: 1 }]);
    expect(body.harmed[0]?.sentence).toContain(`late, whole on ${room.day(20)}`);
    expect(body.helped[0]?.sentence).toContain('KIT-0002');
    const moved = await clerk.call(moveLotToKit, { ...asked, reason: 'the aircraft is grounded' });
    expect(moved.body).toMatchObject({ quantity: 1, takenFrom: [{ kitCode: 'KIT-0001', quantity: 1 }] });
    expect(await lineOf(soon, 'drive')).toMatchObject({ standing: 'late', reservations: [] });
    expect((await lineOf(later, 'drive'))?.reservations).toMatchObject([{ lotCode: seal.code, frozen: null }]);
  });

  it('leaves a frozen promise where it is until somebody ends that with a reason', async () => {
    const held = (await lineOf(later, 'drive'))?.reservations[0];
    const named = { kitId: id(later), reservationId: held?.id ?? '' };
    const frozen = await clerk.call(freezeReservation, { ...named, reason: 'matched to this hub' });
    expect(frozen.status).toBe(200);
    expect((await lineOf(later, 'drive'))?.reservations[0]?.frozen).toMatchObject({ reason: 'matched to this hub' });
    expect((await clerk.call(lotServes, { lotId: seal.id })).body.rows).toMatchObject([{ how: 'frozen' }]);
    const asked = { lotId: seal.id, kitId: id(soon) };
    expect((await clerk.call(whatIf, asked)).body).toMatchObject({ type: '/problems/lot-reserved' });
    expect((await clerk.call(moveLotToKit, { ...asked, reason: 'urgent' })).body.type).toBe('/problems/lot-reserved');
    expect((await clerk.call(kitsOperations.releaseReservation, named)).body.type).toBe('/problems/reservation-frozen');
    expect((await clerk.call(freezeReservation, { ...named, reason: 'twice' })).body.type).toBe(
      '/problems/already-frozen',
    );
    const bare = await clerk.call(unfreezeReservation, { ...named, reason: ' ' });
    expect(bare.status).toBe(422);
    expect((await clerk.call(unfreezeReservation, { ...named, reason: 'another hub' })).status).toBe(200);
    const entry = await room.reads.recordEntry.findFirstOrThrow({ where: { command: 'unfreeze-reservation' } });
    expect(JSON.stringify(entry.body)).toContain('matched to this hub');
  });

  const sameAgain = async (reason: string, order?: 'need-date' | 'priority') => {
    const { body } = await clerk.call(allocationPolicy, {});
    return { order: order ?? body.order, likelihood: body.likelihood, reason };
  };

  it('serves by priority where the shop decides so, with who said it and why', async () => {
    await room.sql('UPDATE work_orders SET priority = 1 WHERE id = $1', [later?.workOrderId]);
    await room.sql('DELETE FROM reservations');
    await clerk.call(changeAllocationPolicy, await sameAgain('read anew'), { version: 1 });
    expect(await lineOf(soon, 'drive')).toMatchObject({ standing: 'have' });
    const stale = await clerk.call(changeAllocationPolicy, await sameAgain('late', 'priority'), { version: 1 });
    expect(stale.status).toBe(412);
    const changed = await sameAgain('an aircraft on the ground comes first', 'priority');
    expect((await clerk.call(changeAllocationPolicy, changed, { version: 2 })).body).toEqual({ version: 3 });
    expect(await lineOf(soon, 'drive')).toMatchObject({ standing: 'late' });
    expect(await lineOf(later, 'drive')).toMatchObject({ standing: 'have' });
    const { body } = await clerk.call(allocationPolicy, {});
    expect(body).toMatchObject({ order: 'priority', version: 3, reason: 'an aircraft on the ground comes first' });
    expect(body.by).not.toBe('');
    const bench = await as(room.shop, 'technician');
    expect((await bench.call(changeAllocationPolicy, changed, { version: 3 })).status).toBe(403);
  });

  it('gives approved work before work the customer may still refuse, whatever its date and priority', async () => {
    const approve = "UPDATE work_orders SET consent = 'approved' WHERE id = $1";
    await room.sql(approve, [soon?.workOrderId]);
    await clerk.call(changeAllocationPolicy, await sameAgain('read anew'), { version: 3 });
    expect(await lineOf(soon, 'drive')).toMatchObject({ standing: 'have' });
    expect(await lineOf(later, 'drive')).toMatchObject({ standing: 'late' });
    const board = (await clerk.call(kitsOperations.kitBoard, {})).body.rows;
    expect(board.map(({ code, likely }) => [code, likely]).sort()).toEqual([
      ['KIT-0001', null],
      ['KIT-0002', 90],
    ]);
  });
});
