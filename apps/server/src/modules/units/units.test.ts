import { unitOperations } from '@hubwright/contracts/units/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { v7 } from 'uuid';
import { as, pin } from '../../../../../tests/support/people.ts';
import { expectRefused } from '../../../../../tests/support/refused.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';
import { Database } from '../../platform/database/client.ts';
import {
  findOrCreateItem,
  install,
  latestTimes,
  openInstallations,
  recordTimes,
  uninstall,
  unresolvedIdentities,
} from './public.ts';

const { find, unitHistory, confirmIdentity } = unitOperations;

describe('units and their parts', () => {
  let shop: ShopApp;
  let inspector: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    inspector = await as(shop, 'inspector');
  });
  afterAll(() => shop.close());

  type Context = Parameters<typeof findOrCreateItem>[0];
  const inTransaction = <T>(body: (context: Context) => Promise<T>) =>
    shop.running.app.get(Database).prisma.$transaction((tx) => body({ tx, now: new Date(), newId: v7 }));
  const item = (kind: 'assembly' | 'hub' | 'blade', partNumber: string, serial: string | null) => ({
    kind,
    modelId: null,
    maker: 'Quillon',
    partNumber,
    serial,
    provisionalName: serial === null ? `unread ${kind}` : null,
  });
  const make = (...given: Parameters<typeof item>) =>
    inTransaction((context) => findOrCreateItem(context, item(...given)));

  it('are one by maker, part number and serial, however the serial is written', async () => {
    const first = await make('hub', 'Q301-61', 'qh 0042');
    const again = await make('hub', 'Q301-61', ' QH  0042 ');
    const other = await make('hub', 'Q201-61', 'QH 0042');
    const leading = await make('hub', 'Q301-61', 'QH 42');
    expect([first.created, again.created, other.created, leading.created]).toEqual([true, false, true, true]);
    expect(again.item.id).toBe(first.item.id);
  });

  it('are two parts while nobody could read either serial', async () => {
    const one = await make('blade', 'Q76-B', null);
    const two = await make('blade', 'Q76-B', null);
    expect(one.item.id).not.toBe(two.item.id);
  });

  it('keep their own times when moved from one propeller to another', async () => {
    const [left, right] = [await make('assembly', 'Q3C-76', 'QA2001'), await make('assembly', 'Q3C-76', 'QA2002')];
    const blade = await make('blade', 'Q76-B', 'QB2001');
    await inTransaction(async (context) => {
      const itemId = blade.item.id;
      await install(context, { itemId, parentId: left.item.id, position: 'blade-1', from: '2024-03-01' });
      await recordTimes(context, {
        itemId,
        on: '2024-03-01',
        sinceNewTenths: null,
        sinceOverhaulTenths: 0,
        basis: 'overhaul',
      });
      await install(context, { itemId, parentId: right.item.id, position: 'blade-2', from: '2025-06-01' });
    });
    const parts = (id: string) => inTransaction(({ tx }) => openInstallations(tx, id));
    expect([(await parts(left.item.id)).length, (await parts(right.item.id)).map(({ position }) => position)]).toEqual([
      0,
      ['blade-2'],
    ]);
    const history = (await inspector.call(unitHistory, { itemId: blade.item.id })).body;
    expect(history.installedIn.map(({ serial, fromDate, toDate }) => [serial, fromDate, toDate])).toEqual([
      ['QA2002', '2025-06-01', null],
      ['QA2001', '2024-03-01', '2025-06-01'],
    ]);
    expect(history.times).toMatchObject([{ sinceNewTenths: 'unknown', sinceOverhaulTenths: 0 }]);
    await inTransaction((context) => uninstall(context, { itemId: blade.item.id, on: '2026-01-10' }));
    expect(await parts(right.item.id)).toEqual([]);
  });

  it('never have more hours since overhaul than since new, nor turn unknown into zero', async () => {
    const { item: hub } = await make('hub', 'Q301-61', 'QH3001');
    const times = {
      itemId: hub.id,
      on: '2026-02-01',
      sinceNewTenths: 100,
      sinceOverhaulTenths: 101,
      basis: 'declared',
    };
    await expect(inTransaction((context) => recordTimes(context, times))).rejects.toThrow('cannot be more');
    await inTransaction((context) => recordTimes(context, { ...times, sinceNewTenths: null }));
    expect(await inTransaction(({ tx }) => latestTimes(tx, hub.id))).toMatchObject({
      sinceNewTenths: null,
      sinceOverhaulTenths: 101,
    });
  });

  it('are unresolved until an inspector signs which serial he read', async () => {
    const unit = await make('assembly', 'Q3C-76', 'QA4001');
    const blade = await make('blade', 'Q76-B', null);
    const itemId = blade.item.id;
    await inTransaction((context) =>
      install(context, { itemId, parentId: unit.item.id, position: 'blade-1', from: '2026-03-01' }),
    );
    const unresolved = () => inTransaction(({ tx }) => unresolvedIdentities(tx, unit.item.id));
    expect((await unresolved()).map(({ id }) => id)).toEqual([itemId]);
    await make('blade', 'Q76-B', 'QB4000');
    const request = {
      operation: confirmIdentity,
      input: { itemId, serial: 'qb4000', signature: pin },
      options: { version: 1 },
    };
    await expectRefused({ shop, visitor: inspector }, request, { status: 409, type: 'identity-taken' });
    const empty = { ...request, input: { ...request.input, serial: '  ' } };
    await expectRefused({ shop, visitor: inspector }, empty, {
      status: 422,
      type: 'invalid-input',
      pointer: '/serial',
    });
    const desk = await as(shop, 'front-desk');
    await expectRefused({ shop, visitor: desk }, request, { status: 403, type: 'not-permitted' });
    const signed = await inspector.call(confirmIdentity, { itemId, serial: 'qb4001', signature: pin }, { version: 1 });
    expect(signed.body).toEqual({ id: itemId, version: 2 });
    expect(await unresolved()).toEqual([]);
    const twice = { ...request, options: { version: 2 } };
    await expectRefused({ shop, visitor: inspector }, twice, { status: 409, type: 'identity-settled' });
  });

  it('are found by one search, an exact code first and alone', async () => {
    await make('hub', 'Q301-61', 'QH5001');
    const exact = (await inspector.call(find, { text: 'qh5001' })).body.rows;
    expect(exact).toMatchObject([{ kind: 'part-of-unit', title: 'QH5001', exact: true }]);
    const gauges = (await inspector.call(find, { text: 'caliper' })).body.rows;
    expect(gauges.map(({ kind, title, exact: whole }) => [kind, title, whole])).toEqual([
      ['instrument', 'CAL-01', false],
      ['instrument', 'CAL-02', false],
    ]);
    const part = (await inspector.call(find, { text: 'Q301-11' })).body.rows;
    expect(part.map(({ title }) => title)).toEqual(['Q301-11']);
    const aircraft = (await inspector.call(find, { text: 'zz-bma' })).body.rows[0];
    expect(aircraft?.path).toMatch(/^\/customers\/[0-9a-f-]{36}$/);
    expect((await inspector.call(find, { text: 'NOTHING-CALLED-SO' })).body.rows).toEqual([]);
    expect((await inspector.call(find, { text: '%%%' })).body.rows).toEqual([]);
  });
});
