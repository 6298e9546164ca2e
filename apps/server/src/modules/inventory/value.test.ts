import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { valueOperations } from '@hubwright/contracts/inventory/value-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { as } from '../../../../../tests/support/people.ts';
import type { Visitor } from '../../../../../tests/support/shop-app.ts';
import { Stockroom } from '../../../../../tests/support/stockroom.ts';
import { countLot } from './count-lot.command.ts';

const { stockValue, partUsage } = valueOperations;

describe('what stock is worth', () => {
  let room: Stockroom;
  let clerk: Visitor;
  beforeAll(async () => {
    room = await Stockroom.open();
    clerk = await as(room.shop, 'parts-room');
  });
  afterAll(() => room.close());

  const washer = async () => {
    const { rows } = (await clerk.call(stockValue, { search: room.number('washer') })).body;
    return rows[0];
  };
  const priced = async (lotId: string, price: string) =>
    room.sql('UPDATE lots SET unit_price = $2 WHERE id = $1', [lotId, price]);

  it('is its moving average and its lots, from the ledger; a customer’s parts are not the shop’s', async () => {
    const cheap = await room.onShelf('washer', 10);
    await priced(cheap.id, '1.00');
    const dear = await room.onShelf('washer', 10);
    await priced(dear.id, '3.00');
    const customer = await room.customer('VALUE', ['maker-new', 'customer-supplied']);
    await room.onShelf('washer', 50, { sourceClass: 'customer-supplied', customerId: customer });
    expect(await washer()).toMatchObject({
      ...{ onHand: 20, byAverageMinor: 4_000, byLotMinor: 4_000, average: '2', idle: 'moving' },
      ...{ lastIssuedOn: null, usedMinor: 0, shrinkageMinor: 0 },
    });
    const kit = await room.kit('V-1', await room.customer('VAL2', ['maker-new']));
    await room.issue(kit, cheap.code, { lineId: kit.line.cover, quantity: 2 });
    // Two went at the average of 2.00, though their lot cost 1.00.
    expect(await washer()).toMatchObject({ onHand: 18, byAverageMinor: 3_600, byLotMinor: 3_800, usedMinor: 400 });
    // Used 4.00, held 0 at the beginning of the year and 36.00 now: 4 / 18.
    expect(await washer()).toMatchObject({ turns: '0.2', lastIssuedOn: room.day(0) });
  });

  it('has its price of one told movement by movement; the newest is what the list says', async () => {
    const steps = (await clerk.call(valueOperations.partAverage, { partId: room.part('washer') })).body;
    expect(steps).toMatchObject({ part: room.number('washer'), isFollowed: true, next: null });
    expect(steps.rows.map(({ kind, quantity, paid, held, average }) => [kind, quantity, paid, held, average])).toEqual([
      ['issue', 2, null, 18, '2'],
      ['receipt', 10, '3.00', 20, '2'],
      ['receipt', 10, '1.00', 10, '1'],
    ]);
    expect(steps.rows[0]?.average).toBe((await washer())?.average);
    const first = (await clerk.call(valueOperations.partAverage, { partId: room.part('washer'), limit: 2 })).body;
    const rest = { partId: room.part('washer'), limit: 2, after: first.next ?? '' };
    expect((await clerk.call(valueOperations.partAverage, rest)).body).toMatchObject({
      rows: [steps.rows[2]],
      next: null,
    });
  });

  it('says what counts missed, and every number is the sum of its movements', async () => {
    const lot = await room.onShelf('washer', 100);
    await priced(lot.id, '2.00');
    const counted = { lotId: lot.id, bin: 'B-01', counted: 99, reason: 'cycle count' };
    await room.shop.run(countLot, counted, room.clerk, { version: lot.version });
    expect(await washer()).toMatchObject({ lost: 1, found: 0, shrinkageMinor: 200, onHand: 117 });
    const behind = await clerk.call(inventoryOperations.listMovements, {
      partId: room.part('washer'),
      flow: 'counts',
      since: room.day(-1),
      before: room.day(2),
    });
    expect(behind.body.rows).toMatchObject([{ quantity: 1, to: { kind: 'count' }, reason: 'cycle count' }]);
    const none = await clerk.call(inventoryOperations.listMovements, {
      partId: room.part('washer'),
      before: room.day(-1),
    });
    expect(none.body.rows).toEqual([]);
    const { months } = (await clerk.call(partUsage, { partId: room.part('washer') })).body;
    expect(months).toHaveLength(24);
    expect(months[0]).toMatchObject({ issued: 2, returned: 0, received: 170, counted: -1, scrapped: 0 });
  });

  it('what counts missed is told of the time that is asked for, and of no day to come', async () => {
    const ask = async (since: string) => {
      const { status, body } = await clerk.call(stockValue, { search: room.number('washer'), since });
      return { status, row: body.rows?.[0], since: body.since };
    };
    await room.sql('ALTER TABLE movements DISABLE TRIGGER ALL');
    await room.sql("UPDATE movements SET at = at - interval '40 days' WHERE part_id = $1", [room.part('washer')]);
    await room.sql('ALTER TABLE movements ENABLE TRIGGER ALL');
    // Another movement, since one that only changed its day is no new state of the ledger.
    await room.onShelf('washer', 1);
    expect(await ask(room.day(-60))).toMatchObject({ since: room.day(-60), row: { lost: 1, shrinkageMinor: 200 } });
    expect(await ask(room.day(-30))).toMatchObject({ since: room.day(-30), row: { lost: 0, shrinkageMinor: 0 } });
    expect(await ask(room.day(5))).toMatchObject({ status: 422 });
  });

  it('is slow and dead by the shop’s months, and the totals are those of all its parts', async () => {
    // The ledger is moved back in time by its owner: nobody waits two years in a test.
    await room.sql('ALTER TABLE movements DISABLE TRIGGER ALL');
    const back = (months: number, name: 'seal' | 'spring') =>
      room.sql('UPDATE movements SET at = at - make_interval(months => $1) WHERE part_id = $2', [
        months,
        room.part(name),
      ]);
    await room.onShelf('seal', 4, { cureDate: room.day(-30) });
    await room.onShelf('spring', 3);
    await back(13, 'seal');
    await back(25, 'spring');
    await room.sql('ALTER TABLE movements ENABLE TRIGGER ALL');
    const idle = async (state: 'slow' | 'dead') =>
      (await clerk.call(stockValue, { idle: state })).body.rows.map(({ part }) => part.number);
    expect(await idle('slow')).toContain(room.number('seal'));
    expect(await idle('dead')).toContain(room.number('spring'));
    const { rows, totals } = (await clerk.call(stockValue, { limit: 200 })).body;
    const sum = (of: (row: (typeof rows)[number]) => number) => rows.reduce((all, row) => all + of(row), 0);
    expect(totals.byLotMinor).toBe(sum(({ byLotMinor }) => byLotMinor));
    // Rounded once as a whole, and once a row.
    expect(Math.abs(totals.byAverageMinor - sum(({ byAverageMinor }) => byAverageMinor ?? 0))).toBeLessThan(
      rows.length,
    );
    expect(totals.notFollowed).toBe(0);
  });

  it('holds by the ledger what the balances hold, part for part', async () => {
    const { rows } = (await clerk.call(stockValue, { limit: 200 })).body;
    for (const { average, onHand, byAverageMinor } of rows.filter((row) => row.average !== null))
      expect(Math.abs(Number(average) * onHand * 100 - (byAverageMinor ?? Number.NaN))).toBeLessThan(1 + onHand / 100);
    expect(rows.filter(({ onHand, average }) => onHand > 0 !== (average !== null))).toEqual([]);
  });
});
