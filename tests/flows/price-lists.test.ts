import { importOperations } from '@hubwright/contracts/imports/operations';
import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { as } from '../support/people.ts';
import { tableHashes } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';
import { sendTable } from '../support/tables.ts';

const { previewImport, applyImport } = importOperations;

describe('suppliers’ price lists', () => {
  let shop: ShopApp;
  let clerk: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    clerk = await as(shop, 'parts-room');
    const parts = [
      'part number,maker,description,class,issue unit,pack size,unit price,lead time,shelf life',
      'IM-1,Quillon,washer,hardware,piece,25,0.25,21,',
      'IM-2,Quillon,drive seal,seal,piece,10,4.50,14,60',
    ];
    const { id } = await sent('parts', parts.join('\r\n'));
    expect((await apply(id)).status).toBe(200);
  }, 120_000);
  afterAll(() => shop.close());

  const sent = async (kind: string, bytes: string) => {
    const { status, body } = await sendTable(shop, clerk, { kind, bytes });
    expect({ status, body }).toMatchObject({ status: 200 });
    return body;
  };
  const preview = async (importId: string, more: object = {}) =>
    (await clerk.call(previewImport, { importId, limit: 200, ...more })).body;
  const apply = async (importId: string) => {
    const { mapping } = await preview(importId);
    return clerk.call(applyImport, { importId, mapping });
  };
  const part = async (number: string) => {
    const { rows } = (await clerk.call(partOperations.listParts, { search: number })).body;
    return rows.find((row) => row.number === number);
  };
  const head =
    'supplier code,part number,supplier part number,unit price,from quantity,pack size,least quantity,lead time days,valid from,valid until';
  const list = (...rows: string[]) => [head, ...rows].join('\r\n');
  const offersOf = async (number: string) => {
    const { id = '' } = (await part(number)) ?? {};
    return (await clerk.call(offerOperations.listOffers, { partId: id })).body.rows;
  };
  const good = list(
    `HARROW,IM-1,HL-900,0.30,1,25,50,12,,2099-12-31`,
    `HARROW,IM-1,,0.24,200,,,,,`,
    `HARROW,IM-2,HL-901,4.40,,10,,14,,`,
  );

  it('names what does not fit together at its cell, and takes nothing over', async () => {
    const { id } = await sent(
      'offers',
      list(
        'HARROW,IM-1,HL-900,0.30,1,25,50,12,,',
        'HARROW,IM-1,,0.24,1,30,,,,',
        'NOBODY,IM-1,,0.24,1,,,,,',
        'HARROW,IM-2,,4.40,10,,,,,2020-01-31',
        'HARROW,IM-99,,4.40,,,,,,31.12.2099',
      ),
    );
    const { rows, counts } = await preview(id);
    expect(counts).toEqual({ new: 1, changed: 0, same: 0, wrong: 4 });
    expect(rows.flatMap(({ line, errors }) => errors.map(({ field, detail }) => [line, field, detail]))).toEqual([
      [3, 'packSize', 'Line 2 says 25 of the same offer'],
      [3, 'from', 'Line 2 has the price from 1 on already'],
      [4, 'supplier', 'There is no supplier NOBODY'],
      [5, 'from', 'No price for fewer than 10: write one, or 10 as the least quantity'],
      [5, 'validUntil', 'These prices have run out'],
      [6, 'number', 'There is no part IM-99; import the part numbers first'],
      [6, 'validUntil', '“31.12.2099” is no date: write it as 2026-11-30'],
    ]);
    expect((await apply(id)).body).toMatchObject({ type: '/problems/rows-wrong' });
    expect(await offersOf('IM-1')).toEqual([]);
  });

  it('become offers with their breaks; the same file again changes nothing', async () => {
    const { id } = await sent('offers', good);
    expect((await apply(id)).body).toMatchObject({ counts: { new: 3, changed: 0, wrong: 0 } });
    expect(await offersOf('IM-1')).toMatchObject([
      {
        ...{ supplierPartNumber: 'HL-900', packSize: 25, minimum: 50, leadTimeDays: 12, preference: 1, holds: true },
        ...{ validFrom: null, validUntil: '2099-12-31' },
        breaks: [
          { from: 1, unitPrice: '0.30' },
          { from: 200, unitPrice: '0.24' },
        ],
      },
    ]);
    const { part_offers: before } = await tableHashes(shop.databaseUrl);
    const again = await sent('offers', good);
    expect((await preview(again.id)).counts).toEqual({ new: 0, changed: 0, same: 3, wrong: 0 });
    expect((await apply(again.id)).body).toMatchObject({ type: '/problems/nothing-new' });
    expect((await tableHashes(shop.databaseUrl)).part_offers).toBe(before);
  });

  it('a newer list says what it changes', async () => {
    const newer = await sent('offers', good.replace('0.24,200', '0.22,300'));
    const [first] = (await preview(newer.id, { only: 'changed' })).rows;
    expect(first?.changes).toEqual([{ field: 'unitPrice', from: '0.30; 0.24 from 200', to: '0.30; 0.22 from 300' }]);
    expect((await apply(newer.id)).status).toBe(200);
    expect((await offersOf('IM-1'))[0]).toMatchObject({ version: 2 });
  });

  it('one that begins later stands beside the one that holds until the day before', async () => {
    const later = await sent('offers', list('HARROW,IM-2,,4.90,,10,,,2099-01-01,', 'HARROW,IM-2,,4.60,100,,,,,'));
    const { rows, counts } = await preview(later.id);
    expect(counts).toMatchObject({ new: 2, wrong: 0 });
    expect(rows[0]?.changes).toEqual([
      { field: 'validUntil', from: 'no end (the prices before)', to: '2098-12-31 (the prices before)' },
    ]);
    expect((await apply(later.id)).status).toBe(200);
    const offers = await offersOf('IM-2');
    expect(offers).toHaveLength(2);
    expect(offers).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ validFrom: null, validUntil: '2098-12-31', holds: true, version: 2 }),
        expect.objectContaining({
          ...{
            validFrom: '2099-01-01',
            validUntil: null,
            holds: false,
            supplierPartNumber: 'HL-901',
            leadTimeDays: 14,
          },
          breaks: [
            { from: 1, unitPrice: '4.90' },
            { from: 100, unitPrice: '4.60' },
          ],
        }),
      ]),
    );
    const again = await sent('offers', list('HARROW,IM-2,,4.95,,10,,,2098-06-01,'));
    expect((await preview(again.id)).rows[0]?.errors).toEqual([
      expect.objectContaining({
        field: 'validUntil',
        detail: 'Other prices begin on 2099-01-01: name a last day before it',
      }),
    ]);
    expect((await apply(again.id)).body).toMatchObject({ type: '/problems/rows-wrong' });
    expect(await offersOf('IM-2')).toEqual(offers);
  });

  it('go out as they come in', async () => {
    const { body } = await clerk.call(importOperations.exportTable, { list: 'offers' });
    const back = await preview((await sent('offers', (body as unknown as { text: string }).text)).id);
    expect(back.counts).toMatchObject({ new: 0, changed: 0, wrong: 0 });
  });
});
