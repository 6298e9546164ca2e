import { allocationOperations } from '@hubwright/contracts/kits/allocation-operations';
import { expectedOperations } from '@hubwright/contracts/kits/expected-operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { installFromTray } from '../../apps/server/src/modules/kits/install-from-tray.command.ts';
import { replaceRackPart } from '../../apps/server/src/modules/kits/replace-rack-part.command.ts';
import { as } from '../support/people.ts';
import type { Visitor } from '../support/shop-app.ts';
import { firstList, type KitOf, type PartName, Stockroom } from '../support/stockroom.ts';
import { unitDue } from '../support/unit-due.ts';

/**
 * Four little governors were finished here, in two of them the bushing was worn. One is in the house, twenty come due: what will they need?
 */
describe('what units that are not in work yet are expected to need', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let here: KitOf;
  let customer: string;
  beforeAll(async () => {
    room = await Stockroom.open();
    clerk = await as(room.shop, 'parts-room');
    customer = await room.customer('AHEAD', ['maker-new']);
    const bushings = await room.onShelf('bushing', 2);
    for (const n of [1, 2, 3, 4]) await finished(await room.kit(`F${n}`, customer), n <= 2 ? bushings.code : undefined);
    here = await room.kit('HERE-1', customer);
    await room.sql("UPDATE work_orders SET consent = 'approved' WHERE id = $1", [here.workOrderId]);
  }, 180_000);
  afterAll(() => room.close());

  /** Through the bench and out of the house; the stages between are another test's story. */
  async function finished(kit: KitOf, newBushing: string | undefined): Promise<void> {
    const tags = await room.takenOff(kit);
    if (newBushing) {
      const worn = { kitId: kit.kitId, lotId: tags.pilot?.lotId ?? '', quantity: 1, reason: 'worn' };
      const { lineId } = await room.shop.run(replaceRackPart, worn, room.technician);
      await room.issue(kit, newBushing, { lineId, quantity: 1 });
      await room.sql("UPDATE work_orders SET stage = 'build', consent = 'approved' WHERE id = $1", [kit.workOrderId]);
      await room.shop.run(installFromTray, { kitId: kit.kitId, lineId, lotCode: newBushing }, room.technician);
    }
    await room.sql(
      "UPDATE work_orders SET stage = 'closed', consent = 'approved', released_at = now() - interval '5 days', closed_at = now() WHERE id = $1",
      [kit.workOrderId],
    );
    await room.sql("UPDATE kits SET state = 'closed' WHERE id = $1", [kit.kitId]);
  }

  const shortages = async (name: PartName, of: 'kits' | 'all' = 'all') => {
    const { body } = await clerk.call(kitsOperations.shortages, { search: room.number(name), of });
    return body.rows[0];
  };
  const expected = async (name: PartName) =>
    (await clerk.call(expectedOperations.expectedDemand, { partId: room.part(name) })).body;
  const behindIt = async (name: PartName) =>
    (await clerk.call(expectedOperations.expectedUnits, { partId: room.part(name), limit: 200 })).body.rows;
  const linesHere = async () =>
    (await clerk.call(kitsOperations.kitDetail, { kitId: here.kitId })).body.lines.map(
      ({ id, have, onOrder, short, pegs, standing, sentence }) => ({
        id,
        have,
        onOrder,
        short,
        pegs,
        standing,
        sentence,
      }),
    );

  it('comes beside what kits are short of and changes nothing for them', async () => {
    await room.onShelf('washer', 5);
    const before = await linesHere();
    for (let n = 0; n < 20; n += 1)
      await unitDue(room, `OUT-${n}`, { customerId: customer, dueOn: room.day(20 + 4 * n) });
    expect(await linesHere()).toEqual(before);
    // Twenty units, of which 60 % are taken to come as long as none ever did: two washers each.
    const washers = await shortages('washer');
    expect(washers).toMatchObject({ short: 0, kitLines: 0, suggested: 0 });
    expect(washers?.expected).toMatchObject({ quantity: 24, pieces: 24, short: 21 });
    expect(washers?.expected?.sentences).toEqual([
      expect.stringMatching(
        /^24 × TW-10 test washer expected for 20 units coming due, .*; 21 of 24 planned are not covered\.$/,
      ),
    ]);
    expect(await shortages('washer', 'kits')).toBeUndefined();
    const seals = await shortages('seal', 'kits');
    expect(seals).toMatchObject({ short: 1, expected: { quantity: 12 } });
  });

  it('is told unit by unit, and the units add up to it', async () => {
    const { months, returning, summary } = await expected('washer');
    const behind = await behindIt('washer');
    expect(behind).toHaveLength(20);
    expect(behind[0]).toMatchObject({ kind: 'due', each: 2, workOrder: null, unit: { designation: 'VX-TEST' } });
    const sum = (rows: readonly { quantity: number }[]) => rows.reduce((total, { quantity }) => total + quantity, 0);
    expect(sum(behind)).toBeCloseTo(sum(months), 6);
    expect(months.map(({ pieces }) => pieces).reduce((total, pieces) => total + pieces, 0)).toBe(24);
    expect(returning).toMatchObject({ mean: expect.closeTo(0.6, 6), events: 0, asked: 0 });
    expect(summary).toContain('20 units coming due');
  });

  it('counts a replaced bushing by how often one was, with an interval as wide as four units allow', async () => {
    const { findings } = await expected('bushing');
    const behind = await behindIt('bushing');
    expect(findings).toHaveLength(1);
    const [rate] = findings;
    expect(rate).toMatchObject({ model: 'VX-TEST', events: 2, asked: 4 });
    expect(rate?.sentence).toContain('went into 2 of 4 VX-TEST finished here');
    expect(Number(rate?.low)).toBeLessThan(0.2);
    expect(Number(rate?.high)).toBeGreaterThan(0.4);
    expect(behind.filter(({ kind }) => kind === 'finding')).toHaveLength(behind.length);
    // Units out there, and the one in the house that nobody has looked into yet.
    expect(behind.every(({ unit, workOrder }) => unit !== null || workOrder?.id === here.workOrderId)).toBe(true);
  });

  it('is why so many are bought, each number leading to what is behind it', async () => {
    const { version } = await room.reads.kit.findUniqueOrThrow({ where: { id: here.kitId } });
    expect(version).toBeGreaterThan(0);
    const { body } = await clerk.call(buyingOperations.listSuggestions, { search: room.number('seal') });
    const found = body.rows[0];
    expect(found?.by.kit).toBe(1);
    expect(found?.by.due).toBeGreaterThan(3);
    expect(found?.need).toBe((found?.by.kit ?? 0) + (found?.by.due ?? 0));
    const split = found?.because.find(({ sentence }) => sentence.startsWith('1 for kits in house'));
    expect(split).toMatchObject({ from: 'expected', id: room.part('seal'), value: String(found?.need) });
    expect(split?.sentence).toBe(`1 for kits in house, ${found?.by.due} expected from units due: ${found?.need}.`);
    expect(found?.because).toContainEqual(
      expect.objectContaining({
        from: 'expected',
        sentence: expect.stringContaining('expected for 20 units coming due'),
      }),
    );
  });

  it('holds the shop’s own answers against what it said of them, and says so', async () => {
    const { body } = await clerk.call(allocationOperations.allocationPolicy, {});
    expect(body.odds.find(({ answer }) => answer === 'quoteOut')).toEqual({
      ...{ answer: 'quoteOut', said: 85, percent: 85, yes: 0, asked: 0 },
    });
  });

  it('names units whose serial nobody has read, where the list goes by it: they are counted nowhere', async () => {
    expect((await expected('flyweight')).unread).toEqual([]);
    const byNumber = { position: 'weights', quantity: 1, source: 'new', serialFrom: 'VG1500' } as const;
    await room.revised([...firstList, { part: 'flyweight', ...byNumber }]);
    const unread = await room.kit(null, customer);
    await unitDue(room, 'OUT-UNREAD', { customerId: customer, dueOn: room.day(40) });
    await room.sql(
      "UPDATE serialized_items SET serial = NULL, provisional_name = 'red plate' WHERE serial = 'OUT-UNREAD'",
    );
    const found = await expected('flyweight');
    expect(found.unread).toEqual([
      expect.objectContaining({ workOrderId: unread.workOrderId, workOrder: unread.number }),
      expect.objectContaining({ unit: 'VX-TEST red plate', workOrderId: null }),
    ]);
    expect((await expected('washer')).unread).toEqual([]);
  });
});
