// size: one story of the parts room told in order; each step stands on the one before

import { importOperations } from '@hubwright/contracts/imports/operations';
import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { unitPartsOperations } from '@hubwright/contracts/kits/unit-parts-operations';
import { kitListOperations } from '@hubwright/contracts/manuals/kit-list-operations';
import { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import { heldOperations } from '@hubwright/contracts/purchasing/held-operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { setNeedBy } from '../../apps/server/src/modules/kits/set-need-by.command.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { as, pin } from '../support/people.ts';
import { expectUnchanged } from '../support/refused.ts';
import type { Visitor } from '../support/shop-app.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';
import { sendTable } from '../support/tables.ts';

/** Part numbers of the story: nothing of them is in the store, on order, or known at all. */
const partsTable = [
  'part number,maker,description,class,issue unit,pack size,unit price,lead time,bin,shelf life',
  'PR-1,Vexley,cover washer,hardware,piece,10,0.40,10,B-01,',
  'PR-2,Vexley,drive seal,seal,piece,5,6.20,14,A-01,60',
  'PR-3,Vexley,speeder spring,mandatory,piece,1,31.00,21,B-02,',
];
const kitList = [
  'manual,model,part number,position,scopes,per,quantity,minimum,source,serial from,serial to',
  'TH-TEST-1,VX-TEST,PR-1,cover,governor,unit,4,,new,,',
  'TH-TEST-1,VX-TEST,PR-2,drive,governor,unit,2,,new,,',
  'TH-TEST-1,VX-TEST,PR-3,speeder,governor,unit,1,,new,,',
];

describe('the parts room, from an empty store to empty trays', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let inspector: Visitor;
  let technician: Visitor;
  let kits: KitOf[];
  const ids: Record<string, string> = {};
  const orders: Record<string, { id: string; lineId: string; quantity: number }> = {};
  beforeAll(async () => {
    room = await Stockroom.open();
    [clerk, inspector] = [await as(room.shop, 'parts-room'), await as(room.shop, 'inspector')];
    technician = await as(room.shop, 'technician');
  }, 120_000);
  afterAll(async () => {
    expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
    await room.close();
  });

  const imported = async (kind: string, lines: readonly string[]) => {
    const { body } = await sendTable(room.shop, clerk, { kind, bytes: lines.join('\r\n') });
    const shown = (await clerk.call(importOperations.previewImport, { importId: body.id, limit: 200 })).body;
    const apply = () => clerk.call(importOperations.applyImport, { importId: body.id, mapping: shown.mapping });
    return { shown, apply };
  };
  const onHand = async (number: string) => {
    const { rows } = (await clerk.call(inventoryOperations.listLots, { partId: ids[number] ?? '' })).body;
    return rows.reduce((sum, row) => sum + row.onHand, 0);
  };
  /** What the movements behind a number add up to, at places that are the shop's own store. */
  const inStore = async (number: string) => {
    const { rows } = (await clerk.call(inventoryOperations.listMovements, { partId: ids[number] ?? '', limit: 200 }))
      .body;
    const stores = new Set(['bin', 'quarantine', 'tray']);
    return rows.reduce(
      (sum, { quantity, from, to }) =>
        sum + (stores.has(to.kind) ? quantity : 0) - (stores.has(from.kind) ? quantity : 0),
      0,
    );
  };
  const accepted = async (lot: { id: string; version: number }, bin: string) => {
    const verdict = { lotId: lot.id, verdict: 'accepted' as const, bin, signature: pin };
    expect((await inspector.call(inventoryOperations.judgeLot, verdict, { version: lot.version })).status).toBe(200);
  };

  it('takes its part numbers over once the one wrong row is mended', async () => {
    const bad = await imported('parts', [...partsTable, 'PR-4,,no maker,hardware,piece,1,1.00,5,B-01,']);
    expect(bad.shown.counts).toMatchObject({ new: 3, wrong: 1 });
    await expectUnchanged(room.shop, bad.apply, { status: 409, type: 'rows-wrong' });
    const good = await imported('parts', partsTable);
    expect((await good.apply()).body).toMatchObject({ counts: { new: 3, wrong: 0 } });
    for (const number of ['PR-1', 'PR-2', 'PR-3']) {
      const { rows } = (await clerk.call(partOperations.listParts, { search: number })).body;
      ids[number] = rows.find((row) => row.number === number)?.id ?? '';
    }
  });

  it('takes a kit list over, which an inspector issues with the manual’s next revision', async () => {
    expect((await (await imported('kit-lists', kitList)).apply()).status).toBe(200);
    const { rows } = (await inspector.call(kitListOperations.listKitListDrafts, {})).body;
    const [draft] = rows;
    const { manualId } = await room.reads.unitModel.findFirstOrThrow({ where: { designation: 'VX-TEST' } });
    const issued = await inspector.call(kitListOperations.issueKitLists, {
      ...{ manualId: manualId ?? '', revision: '2', issuedOn: room.day(-1) },
      drafts: [{ id: draft?.id ?? '', version: draft?.version ?? 0 }],
    });
    expect(issued.status).toBe(200);
  });

  it('takes its opening stock over: forty washers and nothing else', async () => {
    const stock = await imported('opening-stock', [
      'part number,quantity,bin,supplier lot,certificate',
      'PR-1,40,B-01,OLD-1,C-77',
    ]);
    expect((await stock.apply()).body).toMatchObject({ counts: { new: 1 } });
    const { rows } = (await clerk.call(importOperations.listImports, {})).body;
    const taken = { importId: rows[0]?.id ?? '', signature: pin };
    expect((await inspector.call(importOperations.acceptOpeningStock, taken)).body).toMatchObject({ accepted: 1 });
    expect([await onHand('PR-1'), await inStore('PR-1')]).toEqual([40, 40]);
  });

  it('sees next month’s shortages as soon as three governors are in', async () => {
    const customer = await room.customer('ROOM', ['maker-new']);
    kits = [];
    for (const serial of ['R1', 'R2', 'R3']) kits.push(await room.kit(serial, customer));
    // Approved: likely work would be bought for by its odds only.
    await room.sql("UPDATE work_orders SET consent = 'approved'");
    for (const { kitId } of kits) {
      const { version } = await room.reads.kit.findUniqueOrThrow({ where: { id: kitId } });
      await room.shop.run(setNeedBy, { kitId, needBy: room.day(30) }, room.clerk, { version });
    }
    const { rows } = (await clerk.call(kitsOperations.shortages, { limit: 200 })).body;
    const own = rows.filter(({ part }) => part.number.startsWith('PR-'));
    expect(own.map(({ part, short }) => [part.number, short]).toSorted()).toEqual([
      ['PR-2', 6],
      ['PR-3', 3],
    ]);
    for (const { sentences } of own) expect(sentences.join(' ')).toMatch(/KIT-\d+/);
  });

  it('orders what is short as it is proposed, and the shortage is gone', async () => {
    const { id: supplierId } = await room.reads.supplier.findUniqueOrThrow({ where: { code: 'HARROW' } });
    for (const number of ['PR-2', 'PR-3']) {
      const [found] = (await clerk.call(buyingOperations.listSuggestions, { search: number })).body.rows;
      expect(found?.because.length).toBeGreaterThan(0);
      const lines = [{ partId: ids[number] ?? '', quantity: found?.quantity ?? 0, dueOn: room.day(20) }];
      const raised = await clerk.call(purchasingOperations.raiseOrder, { supplierId, lines });
      expect(raised.status).toBe(200);
      const { items } = (await clerk.call(purchasingOperations.orderDetail, { orderId: raised.body.id })).body;
      orders[number] = { id: raised.body.id, lineId: items[0]?.id ?? '', quantity: found?.quantity ?? 0 };
    }
    expect([orders['PR-2']?.quantity, orders['PR-3']?.quantity]).toEqual([10, 3]);
    const { rows } = (await clerk.call(kitsOperations.shortages, { limit: 200 })).body;
    expect(rows.filter(({ part, short }) => part.number.startsWith('PR-') && short > 0)).toEqual([]);
  });

  it('receives a part of one order, holds the wrong box of the other, and then the rest', async () => {
    const receive = (number: string, quantity: number, deliveryNote: string) =>
      clerk.call(inventoryOperations.receiveLot, {
        ...{ partId: ids[number] ?? '', quantity, sourceClass: 'maker-new' as const, deliveryNote },
        ...{ supplierLot: `L-${deliveryNote}`, certificate: 'C-9', purchaseOrderLineId: orders[number]?.lineId ?? '' },
        ...(number === 'PR-2' ? { cureDate: room.day(-40) } : {}),
      });
    const some = await receive('PR-2', 6, 'D1');
    expect(some.status).toBe(200);
    await accepted(some.body, 'A-01');
    await expectUnchanged(room.shop, () => receive('PR-2', 6, 'D1'), { status: 409, type: 'delivered-twice' });
    const lineId = orders['PR-3']?.lineId ?? '';
    const wrong = { lineId, cause: 'wrong-part' as const, what: 'PR-2 seals', quantity: 3, deliveryNote: 'D2' };
    const held = await clerk.call(heldOperations.holdDelivery, wrong);
    expect(held.status).toBe(200);
    expect([await onHand('PR-3'), await onHand('PR-2')]).toEqual([0, 6]);
    const back = { heldId: held.body.id, returnedOn: room.day(0), returnNote: 'R-5' };
    expect((await clerk.call(heldOperations.returnHeld, back, { version: 1 })).status).toBe(200);
    const springs = await receive('PR-3', 3, 'D3');
    await accepted(springs.body, 'B-02');
    const rest = await receive('PR-2', 4, 'D4');
    await accepted(rest.body, 'A-01');
    expect([await onHand('PR-2'), await inStore('PR-2'), await inStore('PR-3')]).toEqual([10, 10, 3]);
  });

  it('counts a bin, and what it misses is decided by somebody else', async () => {
    const lot = await room.reads.lot.findFirstOrThrow({ where: { partId: ids['PR-1'] ?? '' } });
    const count = { lotId: lot.id, bin: 'B-01', counted: 31, reason: 'cycle count' };
    const waits = await clerk.call(countOperations.countLot, count, {
      version: lot.version,
    });
    expect(waits.body).toMatchObject({ state: 'waiting' });
    expect(await onHand('PR-1')).toBe(40);
    const manager = await as(room.shop, 'manager');
    const decided = { countId: waits.body.countId, verdict: 'approved' as const };
    expect((await manager.call(countOperations.decideCount, decided)).status).toBe(200);
    expect([await onHand('PR-1'), await inStore('PR-1')]).toEqual([31, 31]);
  });

  it('pulls three kits by scanning lots, one scan a line', async () => {
    for (const { kitId } of kits)
      for (const number of ['PR-1', 'PR-2', 'PR-3']) {
        const lots = await room.reads.lot.findMany({
          where: { partId: ids[number] ?? '', balances: { some: { placeKind: 'bin', onHand: { gt: 0 } } } },
          orderBy: { receivedAt: 'asc' },
        });
        for (const { code } of lots) {
          const { lines } = (await clerk.call(kitsOperations.kitDetail, { kitId })).body;
          if (lines.every(({ part, toPull }) => part.number !== number || toPull === 0)) break;
          const scan = await clerk.call(kitsOperations.issueLot, { kitId, lotCode: code });
          expect([scan.status, scan.body]).toEqual([200, scan.body]);
        }
      }
    for (const { kitId } of kits) {
      const { lines } = (await clerk.call(kitsOperations.kitDetail, { kitId })).body;
      expect(lines.map(({ part, toPull }) => [part.number, toPull])).toEqual([
        ['PR-1', 0],
        ['PR-2', 0],
        ['PR-3', 0],
      ]);
    }
  });

  it('leaves the builders’ trays at nothing, and every number is the sum of its movements', async () => {
    for (const { kitId, workOrderId } of kits) {
      const { tray } = (await technician.call(kitsOperations.kitDetail, { kitId })).body;
      expect(tray.length).toBeGreaterThan(0);
      for (const { lineId, lotCode, quantity } of tray) {
        const put = { kitId, lineId: lineId ?? '', lotCode, quantity };
        const done = await technician.call(unitPartsOperations.installFromTray, put);
        expect([done.status, done.body]).toEqual([200, done.body]);
      }
      expect((await technician.call(kitsOperations.kitDetail, { kitId })).body.tray).toEqual([]);
      const pieces = await room.reads.balance.aggregate({
        where: { placeKind: 'unit', placeRef: workOrderId },
        _sum: { onHand: true },
      });
      expect(pieces._sum.onHand).toBe(7);
    }
    // 31 − 12 washers, 10 − 6 seals, 3 − 3 springs.
    for (const [number, left] of [
      ['PR-1', 19],
      ['PR-2', 4],
      ['PR-3', 0],
    ] as const)
      expect([number, await onHand(number), await inStore(number)]).toEqual([number, left, left]);
  });
});
