import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { placeKinds } from '@hubwright/contracts/inventory/shapes';
import { afterAll, beforeAll, describe, expect, it, test } from '@jest/globals';
import { surrenderLot } from '../../apps/server/src/modules/inventory/surrender-lot.command.ts';
import { suspectLot } from '../../apps/server/src/modules/inventory/suspect-lot.command.ts';
import { as } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import type { Visitor } from '../support/shop-app.ts';
import { Stockroom } from '../support/stockroom.ts';

const { splitLot, mergeLots } = handlingOperations;
/** Where labels are parted and joined; in every other place of the list it is refused with what to do first. */
const divided = ['bin', 'quarantine', 'held'] as const;
const elsewhere = placeKinds.filter((kind) => !divided.some((each) => each === kind));
/** Places that hold pieces; the rest are only where movements come from or go to. */
const outside = ['supplier', 'customer', 'count', 'other-lot'];

describe('where lots are split and merged', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let customerId: string;
  beforeAll(async () => {
    room = await Stockroom.open();
    clerk = await as(room.shop, 'parts-room');
    customerId = await room.customer('DIVIDE', ['maker-new', 'customer-supplied']);
  });
  afterAll(() => room.close());

  const version = async (id: string) => (await room.reads.lot.findUniqueOrThrow({ where: { id } })).version;
  const own = { customerId: '', sourceClass: 'customer-supplied' as const };
  /** A lot of ten, all of it in a place that its ledger is made to say: how pieces come there is another test's story. */
  const lotIn = async (kind: string, ref: string) => {
    const lot = await room.onShelf('washer', 10, kind === 'held' ? { ...own, customerId } : {});
    await room.sql('DELETE FROM balances WHERE lot_id = $1 AND on_hand = 0', [lot.id]);
    await room.sql('UPDATE balances SET place_kind = $2, place_ref = $3 WHERE lot_id = $1 AND on_hand > 0', [
      ...[lot.id, kind, ref],
    ]);
    return lot;
  };

  test.each(divided)('in %s some pieces get a label of their own and are joined to it again', async (kind) => {
    const ref = { bin: 'B-01', quarantine: '', held: customerId }[kind];
    const lot = await lotIn(kind, ref);
    const where = kind === 'bin' ? { bin: 'B-01' } : { place: kind };
    const input = { lotId: lot.id, quantity: 4, reason: 'two boxes', ...where };
    const parted = await clerk.call(splitLot, input, { version: await version(lot.id) });
    expect(parted.status).toBe(200);
    const name = kind === 'bin' ? 'bin B-01' : kind;
    expect(await room.places(lot.id)).toEqual({ [name]: 6 });
    expect(await room.places(parted.body.newLotId)).toEqual({ [name]: 4 });
    const join = { lotId: parted.body.newLotId, intoId: lot.id, reason: 'one box after all' };
    const joined = await clerk.call(mergeLots, join, { version: await version(parted.body.newLotId) });
    expect(joined.body).toMatchObject({ quantity: 4 });
    expect(await room.places(lot.id)).toEqual({ [name]: 10 });
  });

  test.each(elsewhere)('in %s it is refused with what to do first', async (kind) => {
    const lot = await room.onShelf('washer', 10);
    const input = { lotId: lot.id, place: kind, quantity: 4, reason: 'two boxes' };
    const problem = await expectRefused(
      { shop: room.shop, visitor: clerk },
      { operation: splitLot, input, options: { version: await version(lot.id) } },
      { status: 409, type: 'not-divided-here' },
    );
    expect(String(problem.detail).length).toBeGreaterThan(lot.code.length + 10);
    if (outside.includes(kind)) return;
    const [there, into] = [await lotIn(kind, 'x'), await room.onShelf('washer', 1)];
    await expectRefused(
      { shop: room.shop, visitor: clerk },
      {
        operation: mergeLots,
        input: { lotId: there.id, intoId: into.id, reason: 'one label' },
        options: { version: await version(there.id) },
      },
      { status: 409, type: 'not-divided-here' },
    );
  });

  it('what its owner gave up keeps its label, and so does evidence', async () => {
    const lot = await lotIn('held', customerId);
    const other = await lotIn('held', customerId);
    const letter = { lotId: lot.id, letter: 'L-9', dated: room.day(-1), givenBy: 'the owner' };
    await room.shop.run(surrenderLot, letter, room.clerk, { version: await version(lot.id) });
    const part = { lotId: lot.id, place: 'held' as const, quantity: 1, reason: 'one box' };
    const refused = async (operation: typeof splitLot | typeof mergeLots, input: { lotId: string }, type: string) =>
      expectRefused(
        { shop: room.shop, visitor: clerk },
        { operation, input: { ...input }, options: { version: await version(input.lotId) } },
        { status: 409, type },
      );
    await refused(splitLot, part, 'already-surrendered');
    const join = { lotId: other.id, intoId: lot.id, reason: 'one box' };
    await refused(mergeLots, join, 'already-surrendered');
    const doubted = [await room.onShelf('washer', 2), await room.onShelf('washer', 2)];
    for (const { id } of doubted) await room.shop.run(suspectLot, { lotId: id, reason: 'odd marks' }, room.technician);
    const [one, two] = doubted.map(({ id }) => id);
    await refused(mergeLots, { lotId: one ?? '', intoId: two ?? '', reason: 'one box' } as never, 'lot-suspected');
  });

  it('a split of what is not held there says so', async () => {
    const lot = await room.onShelf('washer', 2);
    await expectRefused(
      { shop: room.shop, visitor: clerk },
      {
        operation: splitLot,
        input: { lotId: lot.id, place: 'held', quantity: 1, reason: 'one box' },
        options: { version: await version(lot.id) },
      },
      { status: 409, type: 'not-enough' },
    );
  });
});
