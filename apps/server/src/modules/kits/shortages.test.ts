import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { as } from '../../../../../tests/support/people.ts';
import type { Visitor } from '../../../../../tests/support/shop-app.ts';
import { type KitOf, Stockroom } from '../../../../../tests/support/stockroom.ts';
import { setNeedBy } from './set-need-by.command.ts';

describe('what is short', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let first: KitOf;
  let second: KitOf;
  let supplierId: string;
  beforeAll(async () => {
    room = await Stockroom.open();
    clerk = await as(room.shop, 'parts-room');
    const customer = await room.customer('SHORT', ['maker-new']);
    first = await room.kit('S-1', customer);
    second = await room.kit('S-2', customer);
    const { version } = await room.reads.kit.findUniqueOrThrow({ where: { id: first.kitId } });
    await room.shop.run(setNeedBy, { kitId: first.kitId, needBy: room.day(5) }, room.clerk, { version });
    supplierId = (await room.reads.supplier.findUniqueOrThrow({ where: { code: 'HARROW' } })).id;
    await room.onShelf('washer', 3);
    await room.onShelf('wire', 80);
  });
  afterAll(() => room.close());

  const lineOf = async (kit: KitOf, position: string) => {
    const { body } = await clerk.call(kitsOperations.kitDetail, { kitId: kit.kitId });
    return body.lines.find((line) => line.position === position);
  };

  it('serves the kit needed first, and says what the other lacks, when to order and why', async () => {
    expect(await lineOf(first, 'cover')).toMatchObject({ standing: 'have', have: 2, short: 0 });
    const short = await lineOf(second, 'cover');
    expect(short).toMatchObject({ standing: 'short', have: 1, short: 1, orderBy: room.day(4) });
    expect(short?.sentence).toBe(
      `1 × TW-10 test washer short for KIT-0002 (cover), needed ${room.day(14)}: what there is serves kits needed earlier or approved already. Order by ${room.day(4)}.`,
    );
  });

  it('adds shortages up by part with what to order, the first day to order first', async () => {
    const { body } = await clerk.call(kitsOperations.shortages, {});
    expect(body.rows.map(({ part, short, suggested }) => [part.number, short, suggested])).toEqual([
      ['TS-20', 2, 5],
      ['TW-10', 1, 5],
    ]);
    expect(body.rows[0]?.sentences[0]).toContain('none on the shelf, none on order');
    expect(body.rows[0]?.kits.map(({ kitCode }) => kitCode)).toEqual(['KIT-0001', 'KIT-0002']);
  });

  it('is on order once ordered, late where it comes too late', async () => {
    const lines = [{ partId: room.part('seal'), quantity: 5, dueOn: room.day(9) }];
    const order = await clerk.call(purchasingOperations.raiseOrder, { supplierId, lines });
    expect(order.status).toBe(200);
    expect(await lineOf(first, 'drive')).toMatchObject({ standing: 'late', onOrder: 1, coveredOn: room.day(9) });
    expect(await lineOf(second, 'drive')).toMatchObject({ standing: 'on-order', onOrder: 1, sentence: '' });
    expect((await lineOf(first, 'drive'))?.sentence).toContain(`comes on ${room.day(9)} (${order.body.number})`);
  });

  it('counts what waits in quarantine as coming today, but not what has no paper', async () => {
    const customer = await room.customer('SHORT-2', ['maker-new']);
    const third = await room.kit('S-3', customer, 'teardown');
    await room.sql("UPDATE kit_lines SET source = 'new' WHERE id = $1", [third.line.speeder]);
    const unpapered = await room.received('spring', 1, { certificate: '' });
    const short = await lineOf(third, 'speeder');
    expect(short).toMatchObject({ standing: 'short' });
    expect(short?.sentence).toContain(`${unpapered.code} waits for its certificate`);
    const papered = await room.received('spring', 1);
    expect(await lineOf(third, 'speeder')).toMatchObject({ standing: 'on-order', pegs: [{ code: papered.code }] });
  });

  it('gives no customer a source it does not take', async () => {
    const picky = await room.kit('S-4', await room.customer('PICKY', ['approved-manufacturer']));
    expect(await lineOf(picky, 'safety')).toMatchObject({ standing: 'short', short: 40 });
    expect((await lineOf(picky, 'safety'))?.sentence).toContain('is of a source the customer does not take');
  });

  it('counts a kit line by line on the board, by need date', async () => {
    const { body } = await clerk.call(kitsOperations.kitBoard, {});
    const rows = body.rows.map(({ code, lines, have, onOrder, late, short, issued }) => ({
      code,
      counts: [lines, issued, have, onOrder, late, short],
    }));
    expect(rows.slice(0, 2)).toEqual([
      { code: 'KIT-0001', counts: [5, 0, 2, 0, 1, 0] },
      { code: 'KIT-0002', counts: [5, 0, 1, 1, 0, 1] },
    ]);
    const page = await clerk.call(kitsOperations.kitBoard, { limit: 1 });
    const next = await clerk.call(kitsOperations.kitBoard, { limit: 1, after: page.body.next as string });
    expect(next.body.rows.map(({ code }) => code)).toEqual(['KIT-0002']);
  });
});
