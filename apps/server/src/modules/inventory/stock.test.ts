import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { actorOf, as, pin } from '../../../../../tests/support/people.ts';
import { Stockroom } from '../../../../../tests/support/stockroom.ts';
import { raiseOrder } from '../purchasing/raise-order.command.ts';
import { addCertificate } from './add-certificate.command.ts';
import { countLot } from './count-lot.command.ts';
import { judgeLot } from './judge-lot.command.ts';
import { moveLot } from './move-lot.command.ts';
import { putAway } from './put-away.command.ts';
import { quarantineLot } from './quarantine-lot.command.ts';
import { receiveLot } from './receive-lot.command.ts';
import { reverseMovement } from './reverse-movement.command.ts';
import { scrapLot } from './scrap-lot.command.ts';

describe('stock', () => {
  let room: Stockroom;
  beforeAll(async () => {
    room = await Stockroom.open();
  });
  afterAll(() => room.close());

  it('receives into quarantine and lets nobody take it before it is judged', async () => {
    const lot = await room.received('washer', 100);
    expect(await room.places(lot.id)).toEqual({ quarantine: 100 });
    await expect(room.shop.run(putAway, { lotId: lot.id, bin: 'B-01' }, room.clerk)).rejects.toMatchObject({
      type: 'lot-not-accepted',
    });
  });

  it('is accepted with a signature over HTTP and goes to its bin in the same step', async () => {
    const lot = await room.received('washer', 100);
    const clerk = await as(room.shop, 'parts-room');
    const judge = { lotId: lot.id, verdict: 'accepted' as const, bin: 'b-01' };
    const wrong = { ...judge, signature: { pin: '1111' } };
    const refused = await clerk.call(inventoryOperations.judgeLot, wrong, { version: lot.version });
    expect(refused.body.type).toBe('/problems/signature-refused');
    const answer = await clerk.call(
      inventoryOperations.judgeLot,
      { ...judge, signature: pin },
      { version: lot.version },
    );
    expect(answer.status).toBe(200);
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 100 });
    const detail = await clerk.call(inventoryOperations.lotDetail, { lotId: lot.id });
    expect(detail.body).toMatchObject({ state: 'accepted', onHand: 100, blocked: [] });
  });

  it('needs the authorisation for stock acceptance, at the level of inspection', async () => {
    const lot = await room.received('washer', 5);
    const input = { lotId: lot.id, verdict: 'accepted' as const, signature: pin };
    const caspar = await actorOf(room.shop, 'caspar');
    await expect(room.shop.run(judgeLot, input, caspar, { version: lot.version })).rejects.toMatchObject({
      type: 'not-authorised',
      details: { holders: expect.arrayContaining(['Ines Birtwhistle']) },
    });
  });

  it('cannot be accepted before its certificate came, and can afterwards', async () => {
    const lot = await room.received('spring', 4, { certificate: '' });
    const input = { lotId: lot.id, verdict: 'accepted' as const, signature: pin };
    await expect(room.shop.run(judgeLot, input, room.clerk, { version: lot.version })).rejects.toMatchObject({
      type: 'certificate-missing',
    });
    const paper = { lotId: lot.id, certificate: 'C-77' };
    const { version } = await room.shop.run(addCertificate, paper, room.clerk, { version: lot.version });
    await room.shop.run(judgeLot, input, room.clerk, { version });
    await expect(room.shop.run(judgeLot, input, room.clerk, { version: version + 1 })).rejects.toMatchObject({
      type: 'lot-not-waiting',
    });
  });

  it('moves between bins, never more than lies there', async () => {
    const lot = await room.onShelf('washer', 10);
    await room.shop.run(moveLot, { lotId: lot.id, from: 'B-01', to: 'B-03', quantity: 4 }, room.clerk);
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 6, 'bin B-03': 4 });
    const tooMany = { lotId: lot.id, from: 'B-01', to: 'B-03', quantity: 7 };
    await expect(room.shop.run(moveLot, tooMany, room.clerk)).rejects.toMatchObject({ type: 'not-enough' });
    const nowhere = { ...tooMany, to: 'Z-99', quantity: 1 };
    await expect(room.shop.run(moveLot, nowhere, room.clerk)).rejects.toMatchObject({ type: 'not-found' });
  });

  it('goes back to quarantine as a whole when in doubt', async () => {
    const lot = await room.onShelf('washer', 10);
    await room.shop.run(moveLot, { lotId: lot.id, from: 'B-01', to: 'B-03', quantity: 4 }, room.clerk);
    await room.shop.run(quarantineLot, { lotId: lot.id, reason: 'label does not match' }, room.inspector);
    expect(await room.places(lot.id)).toEqual({ quarantine: 10 });
  });

  it('refuses a count of a bin that changed since it was looked at', async () => {
    const lot = await room.onShelf('washer', 10);
    await room.shop.run(moveLot, { lotId: lot.id, from: 'B-01', to: 'B-03', quantity: 1 }, room.clerk);
    const count = { lotId: lot.id, bin: 'B-01', counted: 10, reason: 'counted before the move' };
    await expect(room.shop.run(countLot, count, room.clerk, { version: lot.version })).rejects.toMatchObject({
      type: 'out-of-date',
    });
  });

  it('scraps the shop’s own, not a customer’s', async () => {
    const lot = await room.onShelf('washer', 10);
    await room.shop.run(
      scrapLot,
      { lotId: lot.id, bin: 'B-01', quantity: 3, reason: 'bent', ...room.witnessed },
      room.clerk,
    );
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 7, scrap: 3 });
    const customerId = await room.customer('OWNER', ['customer-supplied']);
    const theirs = await room.onShelf('spring', 1, { sourceClass: 'customer-supplied', customerId });
    const input = { lotId: theirs.id, bin: 'B-01', quantity: 1, reason: 'cracked', ...room.witnessed };
    await expect(room.shop.run(scrapLot, input, room.clerk)).rejects.toMatchObject({ type: 'owned-by-customer' });
  });

  it('undoes a movement once by its mirror image', async () => {
    const lot = await room.onShelf('washer', 10);
    const scrapped = { lotId: lot.id, bin: 'B-01', quantity: 3, reason: 'wrong lot', ...room.witnessed };
    const { movementId } = await room.shop.run(scrapLot, scrapped, room.clerk);
    const undo = { movementId, reason: 'it was the other lot' };
    const { movementId: mirror } = await room.shop.run(reverseMovement, undo, room.clerk);
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 10 });
    await expect(room.shop.run(reverseMovement, undo, room.clerk)).rejects.toMatchObject({ type: 'already-reversed' });
    await expect(
      room.shop.run(reverseMovement, { movementId: mirror as string, reason: 'again' }, room.clerk),
    ).rejects.toMatchObject({ type: 'cannot-reverse' });
    const clerk = await as(room.shop, 'parts-room');
    const { body } = await clerk.call(inventoryOperations.listMovements, { lotId: lot.id });
    expect(body.rows.map((row) => [row.quantity, row.from.title, row.to.title])).toEqual([
      [3, 'scrap', 'bin B-01'],
      [3, 'bin B-01', 'scrap'],
      [10, 'quarantine', 'bin B-01'],
      [10, 'supplier', 'quarantine'],
    ]);
    expect(body.rows[1]).toMatchObject({ id: movementId, reversedById: mirror });
  });

  it('undoing a receipt gives the order its pieces back', async () => {
    const supplierId = (await room.reads.supplier.findUniqueOrThrow({ where: { code: 'HARROW' } })).id;
    const lines = [{ partId: room.part('washer'), quantity: 50, dueOn: room.day(5) }];
    const order = await room.shop.run(raiseOrder, { supplierId, lines }, room.clerk);
    const line = await room.reads.purchaseOrderLine.findFirstOrThrow({ where: { orderId: order.id } });
    const input = { ...room.input('washer', 50), purchaseOrderLineId: line.id };
    const lot = await room.shop.run(receiveLot, input, room.clerk);
    const stateOf = async () => (await room.reads.purchaseOrder.findUniqueOrThrow({ where: { id: order.id } })).state;
    expect(await stateOf()).toBe('received');
    const receipt = await room.reads.movement.findFirstOrThrow({ where: { lotId: lot.id } });
    await room.shop.run(reverseMovement, { movementId: receipt.id, reason: 'counted the wrong box' }, room.clerk);
    expect(await stateOf()).toBe('ordered');
    expect(await room.places(lot.id)).toEqual({});
  });

  it('lists what expires, soonest first, and what there is of each part', async () => {
    await room.onShelf('seal', 6, { cureDate: room.day(-1800) });
    const clerk = await as(room.shop, 'parts-room');
    const expiring = await clerk.call(inventoryOperations.expiringStock, { withinDays: 60 });
    expect(expiring.body.rows).toEqual([
      expect.objectContaining({ onHand: 6, part: expect.objectContaining({ number: 'TS-20' }) }),
    ]);
    const stock = await clerk.call(inventoryOperations.listPartStock, { search: 'TS-20' });
    expect(stock.body.rows).toEqual([expect.objectContaining({ have: 6, inQuarantine: 0, onOrder: 0, reserved: 0 })]);
  });
});
