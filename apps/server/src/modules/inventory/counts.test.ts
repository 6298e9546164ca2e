import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { shop as shopOfTheSeed } from '../../../../../seed/data/shop.ts';
import { ledgerFaults } from '../../../../../tests/support/ledger-faults.ts';
import { actorOf, as } from '../../../../../tests/support/people.ts';
import { Stockroom } from '../../../../../tests/support/stockroom.ts';
import { beginBinCount } from './begin-bin-count.command.ts';
import { countLot } from './count-lot.command.ts';
import { decideCount } from './decide-count.command.ts';
import { endBinCount } from './end-bin-count.command.ts';
import { moveLot } from './move-lot.command.ts';

describe('counting', () => {
  let room: Stockroom;
  let manager: Awaited<ReturnType<typeof actorOf>>;
  beforeAll(async () => {
    room = await Stockroom.open();
    manager = await actorOf(room.shop, 'manager');
  });
  afterAll(async () => {
    expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
    await room.close();
  });

  const count = (lot: { id: string; version: number }, counted: number, by = room.clerk) =>
    room.shop.run(countLot, { lotId: lot.id, bin: 'B-01', counted, reason: 'cycle count' }, by, {
      version: lot.version,
    });

  it('writes a difference within the tolerance by itself', async () => {
    const lot = await room.onShelf('washer', 100);
    expect(await count(lot, 98)).toMatchObject({ state: 'posted', difference: -2 });
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 98 });
  });

  it('lets a large one wait, blind, until somebody else has decided: also when a manager counted', async () => {
    const lot = await room.onShelf('washer', 100);
    const waits = await count(lot, 60, manager);
    expect(waits).toMatchObject({ state: 'waiting', difference: null, movementId: null });
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 100 });
    const seen = async (who: string) =>
      (await (await as(room.shop, who)).call(countOperations.listCounts, { lotId: lot.id })).body.rows[0];
    expect(await seen('manager')).toMatchObject({ counted: 60, onBook: null, difference: null, value: null });
    expect(await seen('parts-room')).toMatchObject({ counted: 60, onBook: 100, difference: -40 });
    await expect(count(lot, 61)).rejects.toMatchObject({ type: 'count-waiting' });
    const approve = { countId: waits.countId, verdict: 'approved' as const };
    await expect(room.shop.run(decideCount, approve, manager)).rejects.toMatchObject({ type: 'second-person-needed' });
    await room.shop.run(decideCount, approve, room.clerk);
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 60 });
    await expect(room.shop.run(decideCount, approve, room.clerk)).rejects.toMatchObject({ type: 'count-decided' });
    const clerk = await as(room.shop, 'parts-room');
    const { body } = await clerk.call(countOperations.listCounts, { lotId: lot.id });
    expect(body.rows).toEqual([expect.objectContaining({ difference: -40, value: '-100.00', state: 'approved' })]);
  });

  it('is refused or counted again without a movement, and not approved once pieces moved', async () => {
    const lot = await room.onShelf('washer', 50);
    const first = await count(lot, 10);
    await room.shop.run(decideCount, { countId: first.countId, verdict: 'recount' }, manager);
    const shown = async (who: string) =>
      (await (await as(room.shop, who)).call(countOperations.listCounts, { lotId: lot.id })).body.rows.at(-1);
    const blind = { state: 'recount', onBook: null, difference: null, value: null };
    for (const who of ['parts-room', 'manager', 'caspar']) expect(await shown(who)).toMatchObject(blind);
    expect(await shown('inspector')).toMatchObject({ onBook: 50 });
    await expect(count(lot, 20, manager)).rejects.toMatchObject({ type: 'second-person-needed' });
    const second = await count(lot, 20);
    await room.shop.run(decideCount, { countId: second.countId, verdict: 'refused', note: 'box behind' }, manager);
    expect(await shown('parts-room')).toMatchObject({ state: 'recount', onBook: 50, difference: -40 });
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 50 });
    const third = await count(lot, 30);
    await room.shop.run(moveLot, { lotId: lot.id, from: 'B-01', to: 'B-03', quantity: 5 }, room.clerk);
    const approve = room.shop.run(decideCount, { countId: third.countId, verdict: 'approved' }, manager);
    await expect(approve).rejects.toMatchObject({ type: 'moved-since-count' });
  });

  it('is one person’s at a time in a bin', async () => {
    const lot = await room.onShelf('washer', 10);
    await room.shop.run(beginBinCount, { bin: 'b-01' }, room.clerk);
    await room.shop.run(beginBinCount, { bin: 'B-01' }, room.clerk);
    const caspar = await actorOf(room.shop, 'caspar');
    for (const attempt of [
      room.shop.run(beginBinCount, { bin: 'B-01' }, caspar),
      count(lot, 10, caspar),
      room.shop.run(endBinCount, { bin: 'B-01' }, caspar),
    ])
      await expect(attempt).rejects.toMatchObject({ type: 'being-counted' });
    await room.shop.run(endBinCount, { bin: 'B-01' }, manager);
    expect(await count(lot, 10, caspar)).toMatchObject({ state: 'posted', difference: 0 });
    await expect(room.shop.run(endBinCount, { bin: 'B-01' }, caspar)).rejects.toMatchObject({ type: 'not-counting' });
  });

  it('never makes a second piece of one serial, and has no tolerance for it', async () => {
    const lot = await room.onShelf('flyweight', 1, { serial: 'FW-77' });
    await expect(count(lot, 2)).rejects.toMatchObject({ type: 'serial-elsewhere' });
    const there = { lotId: lot.id, bin: 'B-03', counted: 1, reason: 'found' };
    await expect(room.shop.run(countLot, there, room.clerk, { version: lot.version })).rejects.toMatchObject({
      type: 'serial-elsewhere',
    });
    expect(await count(lot, 0)).toMatchObject({ state: 'waiting' });
  });

  it('plans what is due: a serialized piece monthly, what is worth nothing twice a year', async () => {
    const clerk = await as(room.shop, 'parts-room');
    const serial = await room.onShelf('flyweight', 1, { serial: 'FW-78' });
    const plan = async (withinDays: number) =>
      (await clerk.call(countOperations.countsDue, { withinDays, limit: 200 })).body.rows.filter(
        ({ lotId }) => lotId === serial.id,
      );
    expect(await plan(29)).toEqual([]);
    expect(await plan(30)).toEqual([
      expect.objectContaining({ countClass: 'A', dueOn: room.day(30), bin: 'B-01', lastCounted: null, counting: null }),
    ]);
    await count(serial, 1);
    // Forty days of the shop, whose clock may be put back between them: an hour is a day near midnight.
    await room.sql(
      "UPDATE lot_counts SET counted_at = (counted_at AT TIME ZONE $2 - interval '40 days') AT TIME ZONE $2 WHERE lot_id = $1",
      [serial.id, shopOfTheSeed.zone],
    );
    expect(await plan(0)).toEqual([expect.objectContaining({ dueOn: room.day(-10) })]);
  });
});
