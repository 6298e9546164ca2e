import { exportLists, importKinds } from '@hubwright/contracts/imports/kinds';
import { importOperations } from '@hubwright/contracts/imports/operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { kitListOperations } from '@hubwright/contracts/manuals/kit-list-operations';
import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { Reads } from '../../apps/server/src/platform/database/reads.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused, tableHashes } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';
import { sendTable, spreadsheet } from '../support/tables.ts';

const { previewImport, applyImport, acceptOpeningStock, importTemplate, listImports } = importOperations;

describe('a shop brings its tables in', () => {
  let shop: ShopApp;
  let clerk: Visitor;
  let inspector: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [clerk, inspector] = [await as(shop, 'parts-room'), await as(shop, 'inspector')];
  });
  afterAll(() => shop.close());

  const sent = async (kind: string, bytes: string | Uint8Array) => {
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

  const partsTable = (price: string) =>
    [
      'P/N,Manufacturer,Description,Class,UOM,Pack,Price,Lead time,Bin,Shelf life',
      `IM-1,Quillon,"washer, thin",hardware,piece,25,${price},21,B-01,`,
      'IM-2,Quillon,drive seal,Seals,,10,4.50,14,A-01,60',
      'IM-3,Quillon,flyweight,serialized,piece,1,180,30,,',
    ].join('\r\n');

  it('names wrong rows at their cells, and takes nothing over while one is wrong', async () => {
    const bad = [
      partsTable('0.25'),
      'IM-4,,no maker,hardware,piece,5,1.00,3,B-01,',
      'IM-5,Quillon,comma price,hardware,barrel,0,"1,25",3,Z-99,',
      'IM-1,Quillon,again,hardware,piece,5,1.00,3,B-01,',
    ].join('\r\n');
    const { id } = await sent('parts', bad);
    const shown = await preview(id, { only: 'wrong' });
    expect(shown.counts).toEqual({ new: 3, changed: 0, same: 0, wrong: 3 });
    expect(
      shown.rows.map(({ line, errors }) => [line, errors.map(({ field, column }) => `${field} ${column}`)]),
    ).toEqual([
      [5, ['maker 1']],
      [6, ['unitPrice 6', 'issueUnit 4', 'packSize 5', 'homeBin 8']],
      [7, ['number 0']],
    ]);
    const refused = { operation: applyImport, input: { importId: id, mapping: shown.mapping } };
    const body = await expectRefused({ shop, visitor: clerk }, refused, { status: 409, type: 'rows-wrong' });
    expect(body).toMatchObject({ detail: '3 of 6 rows cannot be taken over' });
    expect((body.errors as { detail: string }[]).map(({ detail }) => detail)).toContain(
      'Line 7: Line 2 names the same part number',
    );
  });

  it('takes a whole table over, then only what is new in the next one, and the same table changes nothing', async () => {
    const { id } = await sent('parts', partsTable('0.25'));
    expect((await apply(id)).body).toMatchObject({ counts: { new: 3, changed: 0, same: 0, wrong: 0 } });
    expect(await part('IM-2')).toMatchObject({ class: 'seal', shelfLifeMonths: 60, homeBin: 'A-01', leadTimeDays: 14 });
    const dearer = await sent('parts', partsTable('0.30'));
    const shown = await preview(dearer.id);
    expect(shown.rows.flatMap(({ changes }) => changes)).toEqual([{ field: 'unitPrice', from: '0.25', to: '0.30' }]);
    expect((await apply(dearer.id)).body).toMatchObject({ counts: { new: 0, changed: 1, same: 2 } });
    expect(await part('IM-1')).toMatchObject({ unitPrice: '0.30', version: 2 });
    const again = await sent('parts', partsTable('0.30'));
    const { mapping } = await preview(again.id);
    const request = { operation: applyImport, input: { importId: again.id, mapping } };
    await expectRefused({ shop, visitor: clerk }, request, { status: 409, type: 'nothing-new' });
  });

  it('is on record: who, which file, what each row changed', async () => {
    const { models } = shop.running.app.get(Reads);
    const kept = await models.importedTable.findFirstOrThrow({ orderBy: { id: 'desc' } });
    expect(kept).toMatchObject({ kind: 'parts', newRows: 0, changedRows: 1, sameRows: 2 });
    expect(kept.changes).toEqual([{ line: 2, changes: [{ field: 'unitPrice', from: '0.25', to: '0.30' }] }]);
    const entry = await models.recordEntry.findUniqueOrThrow({ where: { id: kept.entryId } });
    expect(JSON.parse(entry.body)).toMatchObject({
      command: 'apply-import',
      facts: { sha256: kept.sha256, touched: 1 },
    });
    const { rows } = (await clerk.call(listImports, {})).body;
    expect(rows.map(({ kind, newRows }) => [kind, newRows])).toEqual([
      ['parts', 0],
      ['parts', 3],
    ]);
  });

  it('asks which column is which where the headings do not say, and reads what it is told', async () => {
    const { id, mapping } = await sent('prices', 'What,How much\nIM-1,0.35\nIM-2,4.75\n');
    expect(mapping).toEqual({});
    expect(await preview(id)).toMatchObject({ missing: ['number', 'unitPrice'], rows: [] });
    const request = { operation: applyImport, input: { importId: id, mapping: { number: 0 } } };
    const pointer = '/mapping/unitPrice';
    await expectRefused({ shop, visitor: clerk }, request, { status: 422, type: 'columns-missing', pointer });
    expect((await preview(id, { mapping: 'number:0,unitPrice:1' })).counts).toMatchObject({ changed: 2 });
    await clerk.call(applyImport, { importId: id, mapping: { number: 0, unitPrice: 1 } });
    expect([await part('IM-1'), await part('IM-2')]).toMatchObject([{ unitPrice: '0.35' }, { unitPrice: '4.75' }]);
    expect((await clerk.call(applyImport, { importId: id, mapping: {} })).body).toMatchObject({
      type: '/problems/import-gone',
    });
  });

  const stock = (washers: number, certificate = 'C-1') =>
    spreadsheet([
      ['part number', 'qty', 'bin', 'lot', 'certificate', 'cured', 'serial'],
      ['IM-1', washers, 'B-01', 'L-1', certificate, '', ''],
      ['IM-2', 30, 'A-01', 'L-2', 'C-2', new Date(Date.now() - 40 * 86_400_000), ''],
      ['IM-2', 5, 'A-02', 'L-2', '', new Date(Date.now() - 40 * 86_400_000), ''],
      ['IM-3', 1, 'B-01', 'L-3', 'C-3', '', 'fw 7'],
    ]);

  it('brings opening stock as lots in quarantine and ledger movements, once', async () => {
    const wrong = spreadsheet([
      ['part number', 'qty', 'bin', 'lot', 'cured', 'serial'],
      ['IM-2', 3, 'A-01', 'L-9', '2010-01-01', ''],
      ['IM-2', 3, 'A-01', 'L-8', '', ''],
      ['IM-3', 2, 'A-01', 'L-7', '', ''],
      ['IM-1', 1.5, 'A-01', 'L-6', '', ''],
      ['NO-1', 1, 'A-01', 'L-5', '', ''],
    ]);
    const refused = await preview((await sent('opening-stock', wrong)).id);
    expect(refused.rows.map(({ errors }) => errors.map(({ field }) => field))).toEqual([
      ['cureDate'],
      ['cureDate'],
      ['serial', 'quantity'],
      ['quantity'],
      ['number'],
    ]);
    const { id } = await sent('opening-stock', stock(400));
    expect((await apply(id)).body).toMatchObject({ counts: { new: 4, wrong: 0 } });
    const washer = (await part('IM-1')) as { id: string };
    const { rows } = (await clerk.call(inventoryOperations.listLots, { partId: washer.id })).body;
    expect(rows).toMatchObject([{ state: 'quarantine', onHand: 400, certificate: 'C-1', sourceClass: 'maker-new' }]);
    const ledger = (await clerk.call(inventoryOperations.listMovements, { partId: washer.id })).body.rows;
    expect(ledger).toMatchObject([{ quantity: 400, reason: 'opening stock', to: { kind: 'quarantine' } }]);
    const again = await sent('opening-stock', stock(400));
    expect((await apply(again.id)).body).toMatchObject({ type: '/problems/nothing-new' });
    const more = await preview((await sent('opening-stock', stock(410))).id);
    expect(more.rows[0]?.errors[0]?.detail).toBe('This lot came in with 400 already: count it to change that');
  });

  it('is accepted by one signature of someone authorised; a lot without its paper stays in quarantine', async () => {
    const importId = ((await clerk.call(listImports, {})).body.rows[0] as { id: string; waitingLots: number }).id;
    const request = { operation: acceptOpeningStock, input: { importId, signature: { pin: '0000' } } };
    await expectRefused({ shop, visitor: inspector }, request, { status: 403, type: 'signature-refused' });
    const accepted = await inspector.call(acceptOpeningStock, { importId, signature: pin });
    expect(accepted.body).toMatchObject({
      accepted: 3,
      left: 1,
      why: [{ detail: expect.stringContaining('IM-2 needs one') }],
    });
    const seal = (await part('IM-2')) as { id: string };
    const { rows } = (await clerk.call(inventoryOperations.listLots, { partId: seal.id })).body;
    expect(rows.map(({ state, place }) => [state, place]).sort()).toEqual([
      ['accepted', 'bin A-01'],
      ['quarantine', 'quarantine'],
    ]);
    const bare = { operation: acceptOpeningStock, input: { importId, signature: pin } };
    await expectRefused({ shop, visitor: inspector }, bare, { status: 409, type: 'nothing-to-accept' });
  });

  it('brings a kit list as a draft that an inspector issues; routes and limits of the manual stay', async () => {
    const { rows: models } = (await clerk.call(manualOperations.listModels, { limit: 200 })).body;
    const model = models.find(
      ({ currentRevision, bladeCount }) => currentRevision && bladeCount,
    ) as (typeof models)[number];
    const revisionId = model.currentRevision?.id as string;
    const before = (await inspector.call(manualOperations.showRevision, { revisionId })).body;
    const own = before.models.find(({ modelId }) => modelId === model.id) as (typeof before.models)[number];
    const table = [
      'manual,model,part number,position,scopes,per,quantity,minimum,source,serial from,serial to',
      ...own.kitList.map(({ part: number, position, scopes, per, quantity, minimum, source, serialFrom, serialTo }) =>
        [
          model.manual.number,
          model.designation,
          number,
          `"${position}"`,
          scopes.join('; '),
          per,
          quantity,
          minimum ?? '',
          source,
          serialFrom ?? '',
          serialTo ?? '',
        ].join(','),
      ),
    ];
    const same = await preview((await sent('kit-lists', table.join('\n'))).id);
    expect(same.counts).toEqual({ new: 0, changed: 0, same: own.kitList.length, wrong: 0 });
    const added = `${model.manual.number},${model.designation},IM-1,new place,overhaul,blade,2,,new,,`;
    const changed = [table[0], ...table.slice(2), added];
    const { id } = await sent('kit-lists', changed.join('\n'));
    const shown = await preview(id, { only: 'new' });
    expect(shown.rows).toMatchObject([{ verdict: 'new', cells: expect.arrayContaining(['IM-1']) }]);
    const first = own.kitList[0];
    expect(shown.rows[0]?.changes).toEqual([
      { field: 'left out', from: `${first?.part} at ${first?.position}`, to: '' },
    ]);
    expect((await apply(id)).status).toBe(200);
    const { rows: drafts } = (await inspector.call(kitListOperations.listKitListDrafts, {})).body;
    expect(drafts).toMatchObject([{ model: { id: model.id }, current: { revision: before.revision } }]);
    const draft = drafts[0] as (typeof drafts)[number];
    const issue = {
      manualId: model.manual.id,
      revision: 'next',
      issuedOn: '2026-01-02',
      drafts: [{ id: draft.id, version: draft.version }],
    };
    expect((await clerk.call(kitListOperations.issueKitLists, issue)).status).toBe(403);
    const issued = await inspector.call(kitListOperations.issueKitLists, issue);
    expect(issued.status).toBe(200);
    const after = (await inspector.call(manualOperations.showRevision, { revisionId: issued.body.id })).body;
    const plain = (value: unknown) =>
      JSON.parse(JSON.stringify(value, (key, one) => (['id', 'sequence'].includes(key) ? undefined : one)));
    for (const { modelId, kitList: _, ...rest } of before.models)
      expect(plain({ ...after.models.find((one) => one.modelId === modelId), kitList: 0 })).toEqual(
        plain({ ...rest, modelId, kitList: 0 }),
      );
    const list = after.models.find(({ modelId }) => modelId === model.id)?.kitList ?? [];
    expect(list.at(-1)).toMatchObject({ part: 'IM-1', position: 'new place', quantity: 2 });
    expect((await inspector.call(kitListOperations.issueKitLists, issue)).body).toMatchObject({
      type: '/problems/draft-gone',
    });
  });

  it.each(importKinds)('gives a template of %s whose own headings are read without a word', async (kind) => {
    const { body } = await clerk.call(importTemplate, { kind });
    const { id } = await sent(kind, (body as unknown as { text: string }).text);
    expect(await preview(id)).toMatchObject({ missing: [] });
  });

  it.each(exportLists)('hands out %s whole as CSV, a line for each row', async (list) => {
    const { body } = await clerk.call(importOperations.exportTable, { list });
    const text = (body as unknown as { text: string }).text;
    const lines = text.split('\r\n').length - 2;
    const { models } = shop.running.app.get(Reads);
    const counted = {
      parts: () => models.part.count(),
      stock: () => models.balance.count({ where: { onHand: { gt: 0 }, placeKind: { in: ['bin', 'quarantine'] } } }),
      lots: () => models.lot.count(),
      movements: () => models.movement.count(),
      orders: () => models.purchaseOrderLine.count(),
      offers: async () =>
        (await models.partOffer.findMany()).reduce((sum, { breaks }) => sum + (breaks as unknown[]).length, 0),
      suppliers: () => models.supplier.count(),
      'kit-lines': () => models.kitLine.count(),
      counts: () => models.lotCount.count(),
    };
    expect(lines).toBe(await counted[list]());
  });

  it('hands out part numbers that come back as they were: nothing is new', async () => {
    const { id } = await sent('parts', partsTable('0.40').replace('drive seal', '=1+1'));
    expect((await apply(id)).status).toBe(200);
    const { body } = await clerk.call(importOperations.exportTable, { list: 'parts' });
    const text = (body as unknown as { text: string }).text;
    expect(text).toContain("'=1+1");
    const back = await preview((await sent('parts', text)).id);
    expect(back.counts).toMatchObject({ new: 0, changed: 0, wrong: 0 });
  });

  it('refuses what is no table, and who may not, and keeps nothing of it', async () => {
    const before = await tableHashes(shop.databaseUrl);
    const picture = await sendTable(shop, clerk, {
      kind: 'parts',
      bytes: new Uint8Array([1, 0, 2]),
      type: 'application/octet-stream',
    });
    expect(picture).toMatchObject({ status: 422, body: { type: '/problems/table-unreadable' } });
    expect(await sendTable(shop, inspector, { kind: 'parts', bytes: 'a\nb' })).toMatchObject({ status: 403 });
    expect(await sendTable(shop, clerk, { kind: 'people', bytes: 'a\nb' })).toMatchObject({ status: 422 });
    expect(await tableHashes(shop.databaseUrl)).toEqual(before);
  });
});
