import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { as } from '../../../../../tests/support/people.ts';
import type { Visitor } from '../../../../../tests/support/shop-app.ts';
import { type KitOf, type PartName, Stockroom } from '../../../../../tests/support/stockroom.ts';
import { Database } from '../../platform/database/client.ts';
import { judgeClose } from './closing.ts';
import { installFromTray } from './install-from-tray.command.ts';
import { KitCover } from './kit-cover.ts';
import { reserveLine } from './reserve-line.command.ts';

type Link = { twoWay?: boolean; supersedes?: boolean; effectivity?: 'now' | 'from-date' | 'until-used'; from?: string };

describe('what may stand in, and since when', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let customer: string;
  let kit: KitOf;
  let database: Database;
  let kits = 0;
  beforeAll(async () => {
    room = await Stockroom.open();
    clerk = await as(room.shop, 'parts-room');
    database = new Database(room.shop.databaseUrl);
    customer = await room.customer('STANDIN', ['maker-new']);
  });
  beforeEach(async () => {
    // One kit open at a time, so that what covers it is covered by nothing else's need.
    await room.sql("UPDATE kits SET state = 'cancelled'");
    await room.sql("UPDATE balances SET on_hand = 0 WHERE place_kind = 'bin'");
    kits += 1;
    kit = await room.kit(`SI-${kits}`, customer);
  });
  afterAll(async () => {
    await database.close();
    await room.close();
  });

  /** The only link there is, as a clerk sets it. */
  const link = async (name: PartName, use: PartName, more: Link) => {
    await room.sql('DELETE FROM part_alternates');
    const { version } = await room.reads.part.findUniqueOrThrow({ where: { id: room.part(name) } });
    const input = { partId: room.part(name), alternates: [{ number: room.number(use), ...more }] };
    expect((await clerk.call(partOperations.setAlternates, input, { version })).status).toBe(200);
  };
  const pull = (lotCode: string) => clerk.call(kitsOperations.issueLot, { kitId: kit.kitId, lotCode });
  const cover = async () => {
    const lines = await room.shop.running.app.get(KitCover).ofOpenKits();
    const line = lines.find(({ row }) => row.lineId === kit.line.drive);
    return { standing: line?.standing, from: line?.pegs.map(({ code }) => code) };
  };

  it('counts from its day on, for the day of the build: cover, promise and scan agree', async () => {
    const other = await room.onShelf('other seal', 3);
    const { needBy } = await room.reads.kit.findUniqueOrThrow({ where: { id: kit.kitId } });
    const built = needBy.toISOString().slice(0, 10);
    const after = new Date(needBy.getTime() + 86_400_000).toISOString().slice(0, 10);
    await link('seal', 'other seal', { effectivity: 'from-date', from: after });
    expect(await cover()).toEqual({ standing: 'short', from: [] });
    expect((await pull(other.code)).body.type).toBe('/problems/part-not-on-kit');
    const promise = room.shop.run(reserveLine, { kitId: kit.kitId, lineId: kit.line.drive }, room.clerk);
    await expect(promise).rejects.toMatchObject({ type: 'nothing-to-reserve' });
    await link('seal', 'other seal', { effectivity: 'from-date', from: built });
    expect(await cover()).toEqual({ standing: 'have', from: [other.code] });
    expect((await pull(other.code)).status).toBe(200);
  });

  it('goes the other way only where it is said to', async () => {
    const other = await room.onShelf('other seal', 3);
    await link('other seal', 'seal', {});
    expect(await cover()).toEqual({ standing: 'short', from: [] });
    expect((await pull(other.code)).body.type).toBe('/problems/part-not-on-kit');
    await link('other seal', 'seal', { twoWay: true });
    expect(await cover()).toEqual({ standing: 'have', from: [other.code] });
    expect((await pull(other.code)).status).toBe(200);
  });

  it.each([
    ['the list names the old part', 'seal', 'other seal'],
    ['the list names the new part', 'other seal', 'seal'],
  ] as const)('uses up the old before the new: %s', async (_, oldPart, newPart) => {
    const [oldLot, newLot] = [await room.onShelf(oldPart, 1), await room.onShelf(newPart, 3)];
    await link(oldPart, newPart, { twoWay: true, supersedes: true, effectivity: 'until-used' });
    expect(await cover()).toEqual({ standing: 'have', from: [oldLot.code] });
    const early = await pull(newLot.code);
    expect(early.body).toMatchObject({ type: '/problems/old-stock-first', first: oldLot.code });
    const named = { kitId: kit.kitId, lineId: kit.line.drive, lotId: newLot.id };
    await expect(room.shop.run(reserveLine, named, room.clerk)).rejects.toMatchObject({ type: 'old-stock-first' });
    await room.sql('UPDATE balances SET on_hand = 0 WHERE lot_id = $1', [oldLot.id]);
    expect((await pull(newLot.code)).status).toBe(200);
    const put = { kitId: kit.kitId, lineId: kit.line.drive, lotCode: newLot.code };
    await room.shop.run(installFromTray, put, room.technician);
    const { unexpected } = await database.prisma.$transaction((tx) => judgeClose(tx, kit.workOrderId));
    expect(unexpected).toEqual([]);
  });
});
