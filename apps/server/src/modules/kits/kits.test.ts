import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { as } from '../../../../../tests/support/people.ts';
import { type KitOf, Stockroom } from '../../../../../tests/support/stockroom.ts';
import { quarantineLot } from '../inventory/quarantine-lot.command.ts';
import { explodeKit } from './explode-kit.command.ts';
import { releaseReservation } from './release-reservation.command.ts';
import { reserveKit } from './reserve-kit.command.ts';
import { reserveLine } from './reserve-line.command.ts';
import { returnFromTray } from './return-from-tray.command.ts';
import { scrapFromTray } from './scrap-from-tray.command.ts';
import { setNeedBy } from './set-need-by.command.ts';

describe('a kit', () => {
  let room: Stockroom;
  let makerOnly: string;
  let kit: KitOf;
  let count = 0;
  beforeAll(async () => {
    room = await Stockroom.open();
    makerOnly = await room.customer('MAKER', ['maker-new']);
  });
  afterAll(() => room.close());
  beforeEach(async () => {
    count += 1;
    kit = await room.kit(`K-${count}`, makerOnly);
  });

  const reserve = (line: string, more: { lotId?: string; quantity?: number } = {}) =>
    room.shop.run(reserveLine, { kitId: kit.kitId, lineId: line, ...more }, room.clerk);

  it('is made at receiving with every line of the list, and not twice', async () => {
    const lines = await room.reads.kitLine.findMany({ where: { kitId: kit.kitId }, orderBy: { sequence: 'asc' } });
    expect(lines.map(({ position, quantity, minimum, source }) => [position, quantity, minimum, source])).toEqual([
      ['cover', 2, null, 'new'],
      ['drive', 1, null, 'new'],
      ['speeder', 1, null, 'reused'],
      ['pilot', 1, null, 'any'],
      ['safety', 40, 0, 'new'],
    ]);
    const again = { workOrderId: kit.workOrderId, needBy: room.day(20) };
    await expect(room.shop.run(explodeKit, again, room.clerk)).rejects.toMatchObject({ type: 'kit-exists' });
  });

  it('reserves earliest expiry first, its own part before the stand-in', async () => {
    const late = await room.onShelf('seal', 1, { cureDate: room.day(-10) });
    const soon = await room.onShelf('seal', 1, { cureDate: room.day(-300) });
    const standIn = await room.onShelf('other seal', 1, { cureDate: room.day(-900) });
    expect((await reserve(kit.line.drive)).reserved.map(({ lotCode }) => lotCode)).toEqual([soon.code]);
    kit = await room.kit('K-own', makerOnly);
    expect((await reserve(kit.line.drive)).reserved.map(({ lotCode }) => lotCode)).toEqual([late.code]);
    kit = await room.kit('K-stand-in', makerOnly);
    expect((await reserve(kit.line.drive)).reserved.map(({ lotCode }) => lotCode)).toEqual([standIn.code]);
  });

  it('leaves stock that would have too little life at the build, and says so', async () => {
    const old = await room.onShelf('seal', 1, { cureDate: room.day(-1750) });
    await expect(reserve(kit.line.drive)).rejects.toMatchObject({
      type: 'nothing-to-reserve',
      detail: expect.stringContaining(`${old.code} expires on`),
    });
    await expect(reserve(kit.line.drive, { lotId: old.id })).rejects.toMatchObject({ type: 'shelf-life-short' });
  });

  it('names the source of a lot and what the customer accepts', async () => {
    const lot = await room.onShelf('washer', 10, { sourceClass: 'used-serviceable' });
    await expect(reserve(kit.line.cover, { lotId: lot.id })).rejects.toMatchObject({
      type: 'source-not-accepted',
      detail: `${lot.code} is used serviceable; Customer MAKER accepts maker’s new`,
    });
  });

  it('keeps one customer’s parts from another’s kit', async () => {
    const owner = await room.customer('OWNS', ['customer-supplied']);
    const anyone = await room.customer('ANYTHING', ['maker-new', 'customer-supplied']);
    const lot = await room.onShelf('washer', 2, { sourceClass: 'customer-supplied', customerId: owner });
    kit = await room.kit('K-other', anyone);
    await expect(reserve(kit.line.cover, { lotId: lot.id })).rejects.toMatchObject({ type: 'lot-other-owner' });
    kit = await room.kit('K-owner', owner);
    expect((await reserve(kit.line.cover, { lotId: lot.id })).stillNeeds).toBe(0);
  });

  it('promises nothing twice, and gives it free again', async () => {
    const lot = await room.onShelf('washer', 2);
    const mine = await reserve(kit.line.cover, { lotId: lot.id });
    const first = kit;
    kit = await room.kit('K-second', makerOnly);
    await expect(reserve(kit.line.cover, { lotId: lot.id })).rejects.toMatchObject({ type: 'lot-reserved' });
    await expect(room.issue(kit, lot.code)).rejects.toMatchObject({ type: 'lot-reserved' });
    const reservationId = mine.reserved[0]?.reservationId as string;
    await room.shop.run(releaseReservation, { kitId: first.kitId, reservationId }, room.clerk);
    expect((await room.issue(kit, lot.code)).lines).toMatchObject([{ quantity: 2, stillNeeds: 0 }]);
  });

  it('takes what was promised to it into the tray, and lets go of promises beyond its need', async () => {
    const promised = await room.onShelf('washer', 2);
    const other = await room.onShelf('washer', 2);
    await reserve(kit.line.cover, { lotId: promised.id });
    await room.issue(kit, other.code);
    expect(await room.places(other.id)).toEqual({ tray: 2 });
    expect(await room.reads.reservation.count({ where: { kitLineId: kit.line.cover } })).toBe(0);
  });

  it('reserves all the shelf can give and names the rest with its cause', async () => {
    await room.onShelf('washer', 1);
    const before = await room.reads.reservation.count();
    const answer = await room.shop.run(reserveKit, { kitId: kit.kitId }, room.clerk);
    expect(answer.missing.map(({ lineId, cause }) => [lineId, cause])).toContainEqual([
      kit.line.safety,
      'there is none on the shelf',
    ]);
    expect(await room.reads.reservation.count()).toBeGreaterThan(before);
  });

  it('loses its promise when the lot goes to quarantine', async () => {
    const lot = await room.onShelf('wire', 40);
    await reserve(kit.line.safety, { lotId: lot.id });
    const held = await room.shop.run(quarantineLot, { lotId: lot.id, reason: 'recall' }, room.inspector);
    expect(held.freed).toMatchObject([{ quantity: 40 }]);
    expect(await room.reads.reservation.count({ where: { lotId: lot.id } })).toBe(0);
  });

  it('gives back to the bin, and asks for a new one when a piece was dropped', async () => {
    const lot = await room.onShelf('washer', 5);
    await room.issue(kit, lot.code, { quantity: 2 });
    const back = { kitId: kit.kitId, lotCode: lot.code, bin: 'B-03', quantity: 1 };
    const returned = await room.shop.run(returnFromTray, back, room.clerk);
    expect(returned.lines).toMatchObject([{ position: 'cover', quantity: 1, stillNeeds: 1 }]);
    const dropped = { kitId: kit.kitId, lotCode: lot.code, quantity: 1, reason: 'dropped' };
    expect((await room.shop.run(scrapFromTray, dropped, room.technician)).lines).toMatchObject([{ stillNeeds: 2 }]);
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 3, 'bin B-03': 1, scrap: 1 });
    await expect(room.shop.run(returnFromTray, back, room.clerk)).rejects.toMatchObject({ type: 'not-in-tray' });
  });

  it('moves its need date with the version seen', async () => {
    const { version } = await room.reads.kit.findUniqueOrThrow({ where: { id: kit.kitId } });
    const input = { kitId: kit.kitId, needBy: room.day(40) };
    await room.shop.run(setNeedBy, input, room.clerk, { version });
    await expect(room.shop.run(setNeedBy, input, room.clerk, { version })).rejects.toMatchObject({
      type: 'out-of-date',
    });
  });

  it('shows the reader what each line has', async () => {
    const lot = await room.onShelf('washer', 2);
    await room.issue(kit, lot.code);
    const clerk = await as(room.shop, 'parts-room');
    const { body } = await clerk.call(kitsOperations.kitDetail, { kitId: kit.kitId });
    const standing = Object.fromEntries(body.lines.map((line) => [line.position, line.standing]));
    expect(standing).toMatchObject({ cover: 'in-tray', speeder: 'not-needed', pilot: 'not-needed' });
    expect(body.tray).toMatchObject([{ lotCode: lot.code, quantity: 2, position: 'cover' }]);
  });
});
