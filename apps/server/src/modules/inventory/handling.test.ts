import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { ledgerFaults } from '../../../../../tests/support/ledger-faults.ts';
import { actorOf, as, pin } from '../../../../../tests/support/people.ts';
import { Stockroom } from '../../../../../tests/support/stockroom.ts';
import { clearRack } from '../kits/clear-rack.command.ts';
import { reserveKit } from '../kits/reserve-kit.command.ts';
import { grantAuthorisation } from '../people/grant-authorisation.command.ts';
import { decideSuspicion } from './decide-suspicion.command.ts';
import { judgeLot } from './judge-lot.command.ts';
import { mergeLots } from './merge-lots.command.ts';
import { receiveLot } from './receive-lot.command.ts';
import { returnToSupplier } from './return-to-supplier.command.ts';
import { reverseMovement } from './reverse-movement.command.ts';
import { scrapLot } from './scrap-lot.command.ts';
import { splitLot } from './split-lot.command.ts';
import { surrenderLot } from './surrender-lot.command.ts';
import { suspectLot } from './suspect-lot.command.ts';

describe('what is done with lots', () => {
  let room: Stockroom;
  let customerId: string;
  beforeAll(async () => {
    room = await Stockroom.open();
    customerId = await room.customer('HANDLE', ['maker-new', 'customer-supplied']);
  });
  afterAll(async () => {
    expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
    await room.close();
  });

  const lotOf = (id: string) => room.reads.lot.findUniqueOrThrow({ where: { id } });
  const scrap = (lotId: string, quantity: number, more: { bin?: string; witnessId?: string } = {}) =>
    room.shop.run(scrapLot, { lotId, quantity, reason: 'bent', ...room.witnessed, ...more }, room.clerk);

  it('splits a lot where it lies and merges the halves again, promises and all', async () => {
    const lot = await room.onShelf('washer', 10);
    const split = { lotId: lot.id, bin: 'B-01', quantity: 4, reason: 'four are scratched' };
    const done = await room.shop.run(splitLot, split, room.clerk, { version: lot.version });
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 6 });
    expect(await room.places(done.newLotId)).toEqual({ 'bin B-01': 4 });
    const [one, other] = [await lotOf(lot.id), await lotOf(done.newLotId)];
    for (const same of [
      'partId',
      'certificate',
      'supplierLot',
      'sourceClass',
      'state',
      'unitPrice',
      'ownerId',
    ] as const)
      expect(other[same]).toEqual(one[same]);
    const kit = await room.kit('H-1', customerId);
    await room.shop.run(reserveKit, { kitId: kit.kitId }, room.clerk);
    const promised = await room.reads.reservation.findFirstOrThrow({ where: { kitLineId: kit.line.cover } });
    const [from, into] = promised.lotId === lot.id ? [lot.id, done.newLotId] : [done.newLotId, lot.id];
    const input = { lotId: from, intoId: into, reason: 'they are one lot' };
    const merged = await room.shop.run(mergeLots, input, room.clerk, { version: (await lotOf(from)).version });
    expect(await room.places(into)).toEqual({ 'bin B-01': 10 });
    expect(await room.places(from)).toEqual({});
    expect(merged.quantity).toBe(from === lot.id ? 6 : 4);
    expect(await room.reads.reservation.findMany({ where: { kitLineId: kit.line.cover } })).toEqual([
      expect.objectContaining({ lotId: into, quantity: promised.quantity }),
    ]);
    const movement = await room.reads.movement.findFirstOrThrow({
      where: { lotId: into },
      orderBy: { sequence: 'desc' },
    });
    const undo = room.shop.run(reverseMovement, { movementId: movement.id, reason: 'no' }, room.clerk);
    await expect(undo).rejects.toMatchObject({ type: 'cannot-reverse' });
  });

  it('leaves the lot a piece, and merges only what is the same in every respect', async () => {
    const [lot, other] = [await room.onShelf('washer', 3), await room.onShelf('washer', 3, { certificate: 'C-2' })];
    const all = { lotId: lot.id, bin: 'B-01', quantity: 3, reason: 'all' };
    await expect(room.shop.run(splitLot, all, room.clerk, { version: lot.version })).rejects.toMatchObject({
      type: 'nothing-to-split',
    });
    const merge = { lotId: lot.id, intoId: other.id, reason: 'tidy' };
    await expect(room.shop.run(mergeLots, merge, room.clerk, { version: lot.version })).rejects.toMatchObject({
      type: 'lots-differ',
      details: { differ: ['the certificate'] },
    });
    const itself = { ...merge, intoId: lot.id };
    await expect(room.shop.run(mergeLots, itself, room.clerk, { version: lot.version })).rejects.toMatchObject({
      type: 'lots-differ',
    });
  });

  it('scraps before a witness who is somebody else and signs with their own PIN', async () => {
    const lot = await room.onShelf('washer', 5);
    await expect(scrap(lot.id, 1, { bin: 'B-01', witnessId: room.clerk.personId })).rejects.toMatchObject({
      type: 'second-person-needed',
    });
    const clerk = await as(room.shop, 'parts-room');
    const given = { lotId: lot.id, bin: 'B-01', quantity: 2, reason: 'bent', ...room.witnessed };
    const wrong = await clerk.call(handlingOperations.scrapLot, { ...given, witnessSignature: { pin: '1111' } });
    expect(wrong.body).toMatchObject({
      type: '/problems/signature-refused',
      errors: [{ pointer: '/witnessSignature', detail: 'That is not the witness’s own password or PIN' }],
    });
    expect((await clerk.call(handlingOperations.scrapLot, given)).status).toBe(200);
    const signed = await room.reads.stockSignature.findMany({ where: { lotId: lot.id }, orderBy: { role: 'asc' } });
    expect(signed.map(({ role, personId, kind }) => [role, personId, kind])).toEqual([
      ['signer', room.clerk.personId, 'scrapped'],
      ['witness', room.technician.personId, 'scrapped'],
    ]);
    expect(new Set(signed.map(({ contentHash }) => contentHash)).size).toBe(1);
  });

  it('holds a customer’s rejected part as theirs until they gave it up in writing, then destroys it before a witness', async () => {
    const part = await room.received('spring', 2, { sourceClass: 'customer-supplied', customerId });
    const verdict = { lotId: part.id, verdict: 'rejected' as const, note: 'cracked', signature: pin };
    const { version } = await room.shop.run(judgeLot, verdict, room.inspector, { version: part.version });
    expect(await room.places(part.id)).toEqual({ held: 2 });
    await expect(scrap(part.id, 2)).rejects.toMatchObject({ type: 'owned-by-customer' });
    const letter = { lotId: part.id, letter: 'mail of the owner', dated: room.day(0), givenBy: 'the owner’s manager' };
    const future = { ...letter, dated: room.day(2) };
    await expect(room.shop.run(surrenderLot, future, room.clerk, { version })).rejects.toMatchObject({
      type: 'letter-in-future',
    });
    const given = await room.shop.run(surrenderLot, letter, room.clerk, { version });
    await expect(room.shop.run(surrenderLot, letter, room.clerk, { version: given.version })).rejects.toMatchObject({
      type: 'already-surrendered',
    });
    const { movementId } = await scrap(part.id, 2);
    expect(await room.places(part.id)).toEqual({ scrap: 2 });
    const undo = room.shop.run(reverseMovement, { movementId, reason: 'no' }, room.clerk);
    await expect(undo).rejects.toMatchObject({ type: 'cannot-reverse' });
  });

  it('holds what came off a unit for its owner too, out of the job', async () => {
    const kit = await room.kit('H-2', customerId);
    const tags = await room.takenOff(kit);
    await room.shop.run(clearRack, { kitId: kit.kitId, to: 'held', reason: 'worn' }, room.technician);
    const washer = tags.cover as { lotId: string };
    expect(await room.places(washer.lotId)).toEqual({ held: 2 });
    const { version } = await lotOf(washer.lotId);
    const letter = { lotId: washer.lotId, letter: 'order form', dated: room.day(0), givenBy: 'the owner' };
    await room.shop.run(surrenderLot, letter, await actorOf(room.shop, 'front-desk'), { version });
    await scrap(washer.lotId, 2);
    expect(await room.places(washer.lotId)).toEqual({ scrap: 2 });
  });

  it('keeps a suspected lot from every use until an inspector who did not report it has decided', async () => {
    const lot = await room.onShelf('washer', 6);
    const report = { lotId: lot.id, reason: 'marking is ground off' };
    const suspected = await room.shop.run(suspectLot, report, room.inspector);
    expect(await room.places(lot.id)).toEqual({ quarantine: 6 });
    const at = { version: suspected.version };
    const judge = { lotId: lot.id, verdict: 'accepted' as const, signature: pin };
    for (const attempt of [
      room.shop.run(judgeLot, judge, room.inspector, at),
      room.shop.run(suspectLot, report, room.clerk),
      room.shop.run(splitLot, { lotId: lot.id, quantity: 1, reason: 'look' }, room.clerk, at),
      scrap(lot.id, 1),
    ])
      await expect(attempt).rejects.toMatchObject({ type: 'lot-suspected' });
    const decide = { lotId: lot.id, decision: 'cleared' as const, basis: 'maker confirms the mark', signature: pin };
    await expect(room.shop.run(decideSuspicion, decide, room.inspector, at)).rejects.toMatchObject({
      type: 'second-person-needed',
    });
    const second = await actorOf(room.shop, 'sunniva');
    await room.shop.run(
      grantAuthorisation,
      { personId: second.personId, process: 'stock-acceptance', level: 'inspect', validFrom: '2020-01-01' },
      await actorOf(room.shop, 'administrator'),
    );
    const cleared = await room.shop.run(decideSuspicion, decide, second, at);
    expect((await lotOf(lot.id)).state).toBe('quarantine');
    await room.shop.run(judgeLot, judge, room.inspector, { version: cleared.version });
    expect((await lotOf(lot.id)).state).toBe('accepted');
  });

  it('returns pieces against the order they came on, which expects others where they are replaced', async () => {
    const lineId = await room.ordered('washer', 20);
    const lot = await room.shop.run(
      receiveLot,
      { ...room.input('washer', 20), purchaseOrderLineId: lineId },
      room.clerk,
    );
    const back = { lotId: lot.id, quantity: 5, reference: 'RG-17', reason: 'burrs' };
    const kept = await room.shop.run(returnToSupplier, back, room.clerk, { version: lot.version });
    expect(await room.places(lot.id)).toEqual({ quarantine: 15 });
    const received = async () =>
      (await room.reads.purchaseOrderLine.findUniqueOrThrow({ where: { id: lineId } })).received;
    expect(await received()).toBe(20);
    await room.shop.run(returnToSupplier, { ...back, replaced: true }, room.clerk, { version: kept.version });
    expect(await received()).toBe(15);
    const undo = room.shop.run(reverseMovement, { movementId: kept.movementId, reason: 'no' }, room.clerk);
    await expect(undo).rejects.toMatchObject({ type: 'cannot-reverse' });
    const loose = await room.onShelf('washer', 2);
    const none = { ...back, lotId: loose.id, bin: 'B-01', quantity: 1 };
    await expect(room.shop.run(returnToSupplier, none, room.clerk, { version: loose.version })).rejects.toMatchObject({
      type: 'came-without-order',
    });
  });
});
