import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { as } from '../support/people.ts';
import { readBarcodes } from '../support/read-barcodes.ts';
import { readPdf } from '../support/read-pdf.ts';
import type { Visitor } from '../support/shop-app.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';

describe('labels that are printed', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let lot: { id: string; code: string };
  let kit: KitOf;
  beforeAll(async () => {
    room = await Stockroom.open();
    clerk = await as(room.shop, 'parts-room');
    lot = await room.onShelf('seal', 4, { certificate: 'C-LABEL' });
    kit = await room.kit('L-1', await room.customer('LABELS', ['maker-new']));
  }, 120_000);
  afterAll(() => room.close());

  const printed = async (path: string) => {
    const response = await fetch(`${room.shop.address}${path}`, { headers: { cookie: clerk.cookie } });
    expect([response.status, response.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    return new Uint8Array(await response.arrayBuffer());
  };
  const millimetres = async (bytes: Uint8Array) => {
    const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
    const [left = 0, bottom = 0, right = 0, top = 0] = (await (await task.promise).getPage(1)).view;
    await task.destroy();
    return [right - left, top - bottom].map((points) => Math.round((points * 25.4) / 72));
  };

  it.each([
    ['sheet', [210, 297]],
    ['roll-62x29', [62, 29]],
    ['roll-102x51', [102, 51]],
  ] as const)(
    'a lot’s on a %s has its size, a page for each bag, and a code that a reader reads back',
    async (form, size) => {
      const bytes = await printed(`/api/inventory/lots/${lot.id}/label?copies=3&form=${form}`);
      expect(await millimetres(bytes)).toEqual(size);
      expect(await readBarcodes(bytes)).toEqual([lot.code, lot.code, lot.code]);
      const { pages, text, marked } = await readPdf(bytes);
      expect([pages, marked]).toEqual([3, true]);
      for (const fact of [lot.code, room.number('seal'), 'Do not use from', 'C-LABEL']) expect(text).toContain(fact);
    },
  );

  it.each(['sheet', 'roll-62x29', 'roll-102x51'])('a tray’s on a %s opens its kit', async (form) => {
    const { code } = await room.reads.kit.findUniqueOrThrow({ where: { id: kit.kitId } });
    const bytes = await printed(`/api/kits/${kit.kitId}/label?form=${form}`);
    expect(await readBarcodes(bytes)).toEqual([code]);
    expect((await readPdf(bytes)).text).toContain(kit.number);
  });

  it('knows no other paper', async () => {
    const response = await fetch(`${room.shop.address}/api/kits/${kit.kitId}/label?form=stone`, {
      headers: { cookie: clerk.cookie },
    });
    expect(response.status).toBe(422);
  });
});
