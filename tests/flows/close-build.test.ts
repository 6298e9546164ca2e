import { kitsOperations as kits } from '@hubwright/contracts/kits/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import type { Visitor } from '../support/shop-app.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';

describe('a build is closed by the ledger', () => {
  let room: Stockroom;
  let kit: KitOf;
  let bench: Visitor;
  let clerk: Visitor;
  let inspector: Visitor;
  let washer: string;
  let spring: { lotId: string; lotCode: string };

  beforeAll(async () => {
    room = await Stockroom.open();
    [bench, clerk, inspector] = [
      await as(room.shop, 'technician'),
      await as(room.shop, 'parts-room'),
      await as(room.shop, 'inspector'),
    ];
    // Two or three washers under the cover and one or two springs, as the height asks for: what is not used is left over.
    await room.revised([
      { part: 'washer', position: 'cover', quantity: 3, minimum: 2, source: 'new' },
      { part: 'spring', position: 'speeder', quantity: 2, minimum: 1, source: 'reused' },
    ]);
    kit = await room.kit('CB-1', await room.customer('CLOSE', ['maker-new']), 'build');
    washer = (await room.onShelf('washer', 10)).code;
  });
  afterAll(() => room.close());

  const close = () => ({
    operation: travelerOperations.closeBuild,
    input: { workOrderId: kit.workOrderId, signature: pin },
  });
  const done = async (answer: Promise<{ status: number; body: object }>) => {
    const { status, body } = await answer;
    expect([status, body]).toEqual([200, body]);
  };

  it('everything is pulled, taken off, inspected and put in, less one new washer', async () => {
    const off = await bench.call(kits.takeOff, {
      kitId: kit.kitId,
      counted: [{ lineId: kit.line.speeder, quantity: 2 }],
    });
    const tag = off.body.rack[0];
    spring = { lotId: tag?.lotId ?? '', lotCode: tag?.lotCode ?? '' };
    await done(inspector.call(kits.passRackPart, { kitId: kit.kitId, lotId: spring.lotId, signature: pin }));
    const speeder = { kitId: kit.kitId, lineId: kit.line.speeder };
    await done(bench.call(kits.reuseFromRack, { ...speeder, lotCode: spring.lotCode, quantity: 2 }));
    await done(clerk.call(kits.issueLot, { kitId: kit.kitId, lotCode: washer }));
    await done(
      bench.call(kits.installFromTray, { kitId: kit.kitId, lineId: kit.line.cover, lotCode: washer, quantity: 2 }),
    );
  });

  it('is refused, naming the one new washer left in the tray and nothing else', async () => {
    const refused = await expectRefused({ shop: room.shop, visitor: bench }, close(), {
      status: 409,
      type: 'build-not-closed',
    });
    expect(refused.detail).toBe(
      `1 × TW-10 test washer left in the tray (${washer}): install it, or bring it back to its bin.`,
    );
    expect(refused).toMatchObject({ missing: [], unexpected: [], waiting: [] });
    await done(clerk.call(kits.returnFromTray, { kitId: kit.kitId, lotCode: washer, bin: 'B-01' }));
  });

  it('is refused, naming the one reused spring left in the rack and nothing else', async () => {
    const out = { quantity: 1, to: 'back' as const, reason: 'height is right with one' };
    await done(
      bench.call(kits.takeOut, { kitId: kit.kitId, lineId: kit.line.speeder, lotCode: spring.lotCode, ...out }),
    );
    const refused = await expectRefused({ shop: room.shop, visitor: bench }, close(), {
      status: 409,
      type: 'build-not-closed',
    });
    expect(refused.detail).toBe(
      `1 × TP-30 test spring left in the rack (${spring.lotCode}): put it back, replace it, scrap it or return it to its owner.`,
    );
    expect(refused).toMatchObject({ missing: [], unexpected: [], waiting: [] });
  });

  it('closes once the spring went back to its owner', async () => {
    const back = { to: 'customer' as const, lots: [{ lotId: spring.lotId, quantity: 1 }], reason: 'not needed' };
    await done(bench.call(kits.clearRack, { kitId: kit.kitId, ...back }));
    const { operation, input } = close();
    const closed = await bench.call(operation, input);
    expect(closed.body).toMatchObject({ stage: 'final-inspection' });
    expect(await room.reads.kit.findUnique({ where: { id: kit.kitId } })).toMatchObject({ state: 'closed' });
    await expectRefused({ shop: room.shop, visitor: bench }, close(), { status: 409, type: 'wrong-state' });
  });
});
