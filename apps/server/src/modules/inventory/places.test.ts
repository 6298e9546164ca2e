import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { as } from '../../../../../tests/support/people.ts';
import { expectRefused } from '../../../../../tests/support/refused.ts';
import type { Visitor } from '../../../../../tests/support/shop-app.ts';
import { Stockroom } from '../../../../../tests/support/stockroom.ts';

const { addBin, changeBin, listLotsAt, listPlaces } = partOperations;

describe('places', () => {
  let room: Stockroom;
  let clerk: Visitor;
  beforeAll(async () => {
    room = await Stockroom.open();
    clerk = await as(room.shop, 'parts-room');
  });
  afterAll(() => room.shop.close());

  const places = async () => (await clerk.call(listPlaces, { limit: 200 })).body.rows;

  it('are the bins in walking order, empty ones too, then whatever else holds something', async () => {
    await clerk.call(addBin, { code: 'z-1', title: 'Far end', walk: 9_000 });
    await room.onShelf('washer', 40, { bin: 'Z-1' });
    await room.onShelf('washer', 2, { bin: 'Z-1' });
    await room.received('seal', 6);
    const all = await places();
    const walks = all.map(({ walk }) => walk ?? Number.POSITIVE_INFINITY);
    expect(walks).toEqual(walks.toSorted((a, b) => a - b));
    expect(all.find(({ ref }) => ref === 'Z-1')).toEqual({
      kind: 'bin',
      ref: 'Z-1',
      title: 'bin Z-1',
      label: 'Far end',
      walk: 9_000,
      lots: 2,
      parts: 1,
    });
    expect(all.find(({ ref }) => ref === 'A-01')).toMatchObject({ lots: 0, parts: 0 });
    expect(all.at(-1)).toMatchObject({ kind: 'quarantine', title: 'quarantine', walk: null, lots: 1 });
  });

  it('say lot by lot what lies there, and nothing of what lies elsewhere', async () => {
    const there = (await clerk.call(listLotsAt, { kind: 'bin', ref: 'Z-1' })).body.rows;
    expect(there.map(({ part, onHand, state }) => [part.number, onHand, state])).toEqual([
      [room.number('washer'), 40, 'accepted'],
      [room.number('washer'), 2, 'accepted'],
    ]);
    const waiting = (await clerk.call(listLotsAt, { kind: 'quarantine' })).body.rows;
    expect(waiting.map(({ part, onHand, state }) => [part.number, onHand, state])).toEqual([
      [room.number('seal'), 6, 'quarantine'],
    ]);
  });

  it('come page by page without a gap', async () => {
    const all = await places();
    const first = (await clerk.call(listPlaces, { limit: 3 })).body;
    const rest = (await clerk.call(listPlaces, { limit: 200, after: first.next ?? '' })).body;
    expect([...first.rows, ...rest.rows]).toEqual(all);
    const one = (await clerk.call(listLotsAt, { kind: 'bin', ref: 'Z-1', limit: 1 })).body;
    const other = (await clerk.call(listLotsAt, { kind: 'bin', ref: 'Z-1', after: one.next ?? '' })).body;
    expect([...one.rows, ...other.rows].map(({ onHand }) => onHand)).toEqual([40, 2]);
  });

  it('a bin is called and walked to anew; what lies in it stays', async () => {
    const changed = await clerk.call(changeBin, { code: 'z-1', title: 'Beside the door', walk: 1 });
    expect(changed.status).toBe(200);
    expect((await places())[0]).toMatchObject({ ref: 'Z-1', label: 'Beside the door', lots: 2 });
  });

  it('refuse a bin twice, one that is not there, a walk that goes backwards, and another role', async () => {
    const refused = (
      operation: typeof addBin | typeof changeBin,
      input: object,
      how: Parameters<typeof expectRefused>[2],
    ) => expectRefused({ shop: room.shop, visitor: clerk }, { operation, input: { ...input } }, how);
    const bin = { code: 'Z-1', title: '', walk: 4 };
    await refused(addBin, bin, { status: 409, type: 'already-exists', pointer: '/code' });
    await refused(changeBin, { ...bin, code: 'Z-2' }, { status: 404, type: 'not-found' });
    await refused(changeBin, { ...bin, walk: -1 }, { status: 422, type: 'invalid-input', pointer: '/walk' });
    const technician = await as(room.shop, 'technician');
    await expectRefused(
      { shop: room.shop, visitor: technician },
      { operation: changeBin, input: bin },
      { status: 403, type: 'not-permitted' },
    );
  });
});
