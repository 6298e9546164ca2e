import { kitsOperations as kits } from '@hubwright/contracts/kits/operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { lossOperations } from '@hubwright/contracts/vendors/loss-operations';
import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { vendorPieceOperations } from '@hubwright/contracts/vendors/piece-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { passRackPart } from '../../apps/server/src/modules/kits/pass-rack-part.command.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import type { Visitor } from '../support/shop-app.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';

/** A unit that needs two pieces of its own back: everything else is done, so that only what the vendor has stands in the way. */
describe('a build of which a vendor lost a piece', () => {
  let room: Stockroom;
  let kit: KitOf;
  let bench: Visitor;
  let clerk: Visitor;
  let inspector: Visitor;
  let supplierId: string;
  let tags: Awaited<ReturnType<Stockroom['takenOff']>>;
  beforeAll(async () => {
    room = await Stockroom.open();
    [bench, clerk, inspector] = [
      await as(room.shop, 'technician'),
      await as(room.shop, 'parts-room'),
      await as(room.shop, 'inspector'),
    ];
    await room.revised([
      { part: 'spring', position: 'speeder', quantity: 2, source: 'reused' },
      { part: 'bushing', position: 'pilot', quantity: 1, source: 'any' },
    ]);
    kit = await room.kit('LC-1', await room.customer('LOST', ['maker-new']), 'build');
    await room.sql("UPDATE work_orders SET consent = 'approved' WHERE id = $1", [kit.workOrderId]);
    tags = await room.takenOff(kit);
    supplierId = (await room.reads.supplier.findFirstOrThrow({ where: { approvedUntil: { gte: new Date() } } })).id;
  });
  afterAll(async () => {
    expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
    await room.close();
  });

  const done = async (answer: Promise<{ status: number; body: object }>) => {
    const { status, body } = await answer;
    expect([status, body]).toEqual([200, body]);
  };
  const lotOf = (position: 'speeder' | 'pilot') => tags[position] ?? { lotId: '', lotCode: '' };
  const send = async (position: 'speeder' | 'pilot', quantity: number) => {
    const pieces = [{ lotId: lotOf(position).lotId, quantity }];
    const order = { supplierId, purchaseOrder: 'PO-1', paperDue: 'certificate', expectedOn: room.day(9), stepIds: [] };
    const sent = await clerk.call(vendorOperations.sendToVendor, { ...order, pieces });
    expect(sent.status).toBe(200);
    return sent.body.id;
  };
  const lose = (orderId: string, position: 'speeder' | 'pilot', version = 1) => {
    const told = { how: 'destroyed' as const, vendorPaper: 'letter', reason: 'burnt in the oven' };
    const pieces = [{ lotId: lotOf(position).lotId, quantity: 1 }];
    return clerk.call(lossOperations.writeOffPieces, { orderId, pieces, ...told, ...room.witnessed }, { version });
  };
  const missing = async () => {
    const input = { workOrderId: kit.workOrderId, signature: pin };
    const how = { status: 409, type: 'build-not-closed' };
    const refused = await expectRefused(
      { shop: room.shop, visitor: bench },
      { operation: travelerOperations.closeBuild, input },
      how,
    );
    const rows = refused.missing as { part: string; quantity: number }[];
    return rows.map(({ part, quantity }) => `${quantity} × ${part}`).sort();
  };
  const keepsShut = async () => {
    const { open } = (await inspector.call(releaseOperations.releaseChecklist, { workOrderId: kit.workOrderId })).body;
    return open.filter(({ kind }) => kind === 'kit').map(({ what }) => what);
  };

  it('does not close while the pieces are out, nor when one of two is lost: the position asks for a new one', async () => {
    const out = await send('speeder', 2);
    expect(await missing()).toEqual(['1 × TB-40', '2 × TP-30']);
    expect((await lose(out, 'speeder')).body).toMatchObject({ asked: 1, state: 'out' });
    expect(await missing()).toEqual(['1 × TB-40', '1 × TP-30', '1 × TP-30']);
    const back = { lotId: lotOf('speeder').lotId, quantity: 1, condition: 'good' as const };
    const input = { orderId: out, pieces: [back], certificate: 'C-5', paperCame: true, signature: pin };
    await done(inspector.call(vendorPieceOperations.takeBackPieces, input, { version: 2 }));
    await room.shop.run(passRackPart, { kitId: kit.kitId, lotId: back.lotId, signature: pin }, room.inspector);
    const speeder = { kitId: kit.kitId, lineId: kit.line.speeder, lotCode: lotOf('speeder').lotCode };
    await done(bench.call(kits.reuseFromRack, speeder));
    expect(await missing()).toEqual(['1 × TB-40', '1 × TP-30']);
  });

  it('of a position that takes either, a lost piece is asked of stock, one that is out is not', async () => {
    const pilot = async () => {
      const { lines } = (await clerk.call(kits.kitDetail, { kitId: kit.kitId })).body;
      return lines.filter(({ position }) => position === 'pilot').map(({ toPull }) => toPull);
    };
    const out = await send('pilot', 1);
    expect(await pilot()).toEqual([0]);
    expect((await lose(out, 'pilot')).body).toMatchObject({ asked: 1, state: 'back' });
    expect(await pilot()).toEqual([1]);
    expect(await missing()).toEqual(['1 × TB-40', '1 × TP-30']);
    expect((await keepsShut()).join(' ')).toMatch(/TB-40.*TP-30|TP-30.*TB-40/);
  });

  it('closes once new pieces took the place of both', async () => {
    for (const [part, quantity] of [
      ['spring', 1],
      ['bushing', 1],
    ] as const) {
      const { code } = await room.onShelf(part, quantity);
      await done(clerk.call(kits.issueLot, { kitId: kit.kitId, lotCode: code }));
      const { lines } = (await clerk.call(kits.kitDetail, { kitId: kit.kitId })).body;
      const line = lines.find(({ inTray }) => inTray > 0);
      await done(bench.call(kits.installFromTray, { kitId: kit.kitId, lineId: line?.id ?? '', lotCode: code }));
    }
    await done(bench.call(travelerOperations.closeBuild, { workOrderId: kit.workOrderId, signature: pin }));
    expect(await keepsShut()).toEqual([]);
  });
});

/** What comes back when nobody builds any more. */
describe('a piece that comes back after its kit is closed', () => {
  let room: Stockroom;
  beforeAll(async () => {
    room = await Stockroom.open();
  });
  afterAll(() => room.close());

  it('is held for its owner, since nobody would look for it in the rack', async () => {
    await room.revised([{ part: 'bushing', position: 'pilot', quantity: 1, source: 'any' }]);
    const customerId = await room.customer('AFTER', ['maker-new']);
    const kit = await room.kit('LC-2', customerId, 'build');
    const { pilot } = await room.takenOff(kit);
    await room.sql("UPDATE work_orders SET consent = 'approved' WHERE id = $1", [kit.workOrderId]);
    const [clerk, inspector] = [await as(room.shop, 'parts-room'), await as(room.shop, 'inspector')];
    const supplier = await room.reads.supplier.findFirstOrThrow({ where: { approvedUntil: { gte: new Date() } } });
    const lotId = pilot?.lotId ?? '';
    const sent = await clerk.call(vendorOperations.sendToVendor, {
      ...{ supplierId: supplier.id, purchaseOrder: 'PO-2', paperDue: 'certificate', expectedOn: room.day(9) },
      ...{ stepIds: [], pieces: [{ lotId, quantity: 1 }] },
    });
    await room.sql("UPDATE kits SET state = 'closed' WHERE id = $1", [kit.kitId]);
    const came = { lotId, quantity: 1, condition: 'good' as const };
    const input = { orderId: sent.body.id, pieces: [came], certificate: 'C-6', paperCame: true, signature: pin };
    const back = await inspector.call(vendorPieceOperations.takeBackPieces, input, { version: 1 });
    expect(back.body).toMatchObject({ state: 'back', held: 1 });
    const at = await room.reads.balance.findMany({ where: { lotId, onHand: { gt: 0 } } });
    expect(at).toMatchObject([{ placeKind: 'held', placeRef: customerId }]);
    expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
  });
});
