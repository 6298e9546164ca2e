import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { trayOperations } from '@hubwright/contracts/kits/tray-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { as } from '../../../../../tests/support/people.ts';
import { readBarcodes } from '../../../../../tests/support/read-barcodes.ts';
import { readPdf } from '../../../../../tests/support/read-pdf.ts';
import { expectRefused } from '../../../../../tests/support/refused.ts';
import type { Visitor } from '../../../../../tests/support/shop-app.ts';
import { type KitOf, Stockroom } from '../../../../../tests/support/stockroom.ts';
import { quarantineLot } from '../inventory/quarantine-lot.command.ts';

const { swapLot, kitAuditPdf, trayLabelPdf } = trayOperations;

describe('a tray', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let kit: KitOf;
  beforeAll(async () => {
    room = await Stockroom.open();
    clerk = await as(room.shop, 'parts-room');
    kit = await room.kit('S-1', await room.customer('SWAP', ['maker-new']));
  });
  afterAll(() => room.close());

  const paper = async (path: string) => {
    const response = await fetch(room.shop.address + path.replace(':kitId', kit.kitId), {
      headers: { cookie: clerk.cookie },
    });
    return new Uint8Array(await response.arrayBuffer());
  };
  const swap = (lotCode: string, newLotCode: string, more: object = {}) => ({
    kitId: kit.kitId,
    ...{ lotCode, newLotCode, bin: 'B-01', reason: 'scratched face', ...more },
  });

  it('takes another lot in place of one that lies in it, for the same line, both or neither', async () => {
    const [first, second] = [await room.onShelf('washer', 5), await room.onShelf('washer', 5)];
    await room.issue(kit, first.code);
    expect(await room.places(first.id)).toEqual({ 'bin B-01': 3, tray: 2 });
    const one = await clerk.call(swapLot, swap(first.code, second.code, { quantity: 1 }));
    expect(one.body).toMatchObject({
      lotCode: second.code,
      lines: [{ position: 'cover', quantity: 1, stillNeeds: 0 }],
    });
    expect([await room.places(first.id), await room.places(second.id)]).toEqual([
      { 'bin B-01': 4, tray: 1 },
      { 'bin B-01': 4, tray: 1 },
    ]);
    const held = await room.onShelf('washer', 5);
    await room.shop.run(quarantineLot, { lotId: held.id, reason: 'doubt' }, room.inspector);
    const rows: [object, number, string][] = [
      [swap(first.code, held.code), 409, 'lot-not-accepted'],
      [swap(held.code, first.code), 409, 'not-in-tray'],
      [swap(first.code, 'LOT-99999'), 404, 'unknown-scan'],
      [swap(first.code, first.code), 422, 'invalid-input'],
      [swap(first.code, second.code, { quantity: 2 }), 409, 'not-enough'],
      [swap(first.code, second.code, { bin: 'Z-99' }), 404, 'not-found'],
    ];
    for (const [input, status, type] of rows)
      await expectRefused(
        { shop: room.shop, visitor: clerk },
        { operation: swapLot, input: input as never },
        { status, type },
      );
  });

  it('has a sheet to audit it by: each line, each lot where the ledger has it, room for what is found and who signs', async () => {
    const { text, marked } = await readPdf(await paper(kitAuditPdf.path));
    expect(marked).toBe(true);
    for (const words of ['Kit audit KIT-', 'test washer', 'In the tray', 'Counted by', 'Checked by', kit.number])
      expect(text).toContain(words);
    const { body } = await clerk.call(kitsOperations.kitDetail, { kitId: kit.kitId });
    for (const { lotCode } of body.tray) expect(text).toContain(lotCode);
  });

  it('has a label that says whose it is and opens the kit when scanned', async () => {
    const bytes = await paper(trayLabelPdf.path);
    const { text } = await readPdf(bytes);
    for (const words of ['Tray KIT-', kit.number, 'VX-TEST', 'Customer SWAP']) expect(text).toContain(words);
    const { code } = (await clerk.call(kitsOperations.kitDetail, { kitId: kit.kitId })).body;
    expect(await readBarcodes(bytes)).toEqual([code]);
  });
});
