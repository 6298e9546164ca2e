import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { as } from '../../../../../tests/support/people.ts';
import { expectRefused } from '../../../../../tests/support/refused.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';

const { addPart, setAlternates, listParts } = partOperations;

describe('part numbers', () => {
  let shop: ShopApp;
  let parts: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    parts = await as(shop, 'parts-room');
  });
  afterAll(() => shop.close());

  const washer = {
    number: 'TH-100',
    maker: 'Quillon',
    description: 'Washer for the test',
    class: 'hardware' as const,
    issueUnit: 'piece' as const,
    leadTimeDays: 10,
    unitPrice: '1.25',
  };
  const byNumber = async (number: string) => {
    const { rows } = (await parts.call(listParts, { search: number })).body;
    return rows.find((row) => row.number === number) as (typeof rows)[number];
  };

  it('carry their alternates, best first, and are found by number or description', async () => {
    await parts.call(addPart, { ...washer, number: 'TH-101' });
    await parts.call(addPart, { ...washer, number: 'TH-102' });
    const added = await parts.call(addPart, { ...washer, alternates: ['TH-102', 'TH-101'] });
    expect(added.status).toBe(200);
    const found = (await parts.call(listParts, { search: 'washer for' })).body.rows;
    expect(found.map(({ number, alternates }) => [number, alternates.map((use) => use.number)])).toEqual([
      ['TH-100', ['TH-102', 'TH-101']],
      ['TH-101', []],
      ['TH-102', []],
    ]);
  });

  it('refuse alternates that lead back to where they began, over any number of steps', async () => {
    const { id: partId, version } = await byNumber('TH-102');
    await parts.call(addPart, { ...washer, number: 'TH-103', alternates: ['TH-100'] });
    const loop = {
      operation: setAlternates,
      input: { partId, alternates: [{ number: 'TH-103' }] },
      options: { version },
    };
    const body = await expectRefused({ shop, visitor: parts }, loop, { status: 409, type: 'alternates-loop' });
    expect(body.detail).toContain('TH-102');
    const itself = { ...loop, input: { partId, alternates: [{ number: 'TH-102' }] } };
    await expectRefused({ shop, visitor: parts }, itself, { status: 409, type: 'alternates-loop' });
  });

  it('let only one of two clerks close a circle', async () => {
    await parts.call(addPart, { ...washer, number: 'TH-111' });
    await parts.call(addPart, { ...washer, number: 'TH-112' });
    const [one, other] = [await byNumber('TH-111'), await byNumber('TH-112')];
    const answers = await Promise.all([
      parts.call(setAlternates, { partId: one.id, alternates: [{ number: 'TH-112' }] }, { version: one.version }),
      parts.call(setAlternates, { partId: other.id, alternates: [{ number: 'TH-111' }] }, { version: other.version }),
    ]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
  });

  it('refuse what cannot be: twice the number, unknown alternate or bin, negative price, fractions', async () => {
    const refused = (change: Record<string, unknown>, status: number, rest: { type: string; pointer?: string }) =>
      expectRefused(
        { shop, visitor: parts },
        { operation: addPart, input: { ...washer, ...change } },
        { status, ...rest },
      );
    await refused({}, 409, { type: 'already-exists', pointer: '/number' });
    await refused({ number: 'TH-120', alternates: ['TH-101', 'NONE'] }, 422, {
      type: 'unknown-part',
      pointer: '/alternates/1',
    });
    await refused({ number: 'TH-120', homeBin: 'Z-99' }, 404, { type: 'not-found' });
    await refused({ number: 'TH-120', unitPrice: '-1' }, 422, { type: 'invalid-input', pointer: '/unitPrice' });
    await refused({ number: 'TH-120', packSize: 2.5 }, 422, { type: 'invalid-input', pointer: '/packSize' });
    await refused({ number: 'TH-120', colour: 'red' }, 422, { type: 'invalid-input', pointer: '/colour' });
  });

  it('know their bins in walking order and suppliers by their last approved day', async () => {
    await parts.call(partOperations.addBin, { code: 'a-00', title: 'Before the first', walk: 5 });
    const page = (await parts.call(partOperations.listBins, { limit: 2 })).body;
    expect(page.rows.map(({ code }) => code)).toEqual(['A-00', 'A-01']);
    const rest = (await parts.call(partOperations.listBins, { after: page.next ?? '' })).body;
    expect(rest.rows[0]?.code).toBe('A-02');
    const supplier = { code: 'newsup', name: 'New supplier', approvedUntil: '2031-02-28' };
    const asClerk = { operation: supplierOperations.addSupplier, input: supplier };
    await expectRefused({ shop, visitor: parts }, asClerk, { status: 403, type: 'not-permitted' });
    const manager = await as(shop, 'manager');
    expect((await manager.call(supplierOperations.addSupplier, supplier)).status).toBe(200);
    const { rows } = (await parts.call(supplierOperations.listSuppliers, {})).body;
    expect(rows.find(({ code }) => code === 'NEWSUP')?.approvedUntil).toBe('2031-02-28');
    const technician = await as(shop, 'technician');
    const forbidden = { operation: supplierOperations.addSupplier, input: { code: 'TWO', name: 'Two' } };
    await expectRefused({ shop, visitor: technician }, forbidden, { status: 403, type: 'not-permitted' });
  });
});
