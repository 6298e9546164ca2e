import { addDays } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { v7 } from 'uuid';
import { readsOf } from '../../../../../tests/support/arrivals.ts';
import { day } from '../../../../../tests/support/days.ts';
import { actorOf } from '../../../../../tests/support/people.ts';
import { ShopApp } from '../../../../../tests/support/shop-app.ts';
import { Database } from '../../platform/database/client.ts';
import { recordReading } from '../customers/record-reading.command.ts';
import { findOrCreateItem, install, recordTimes, uninstall } from './public.ts';
import { reportInstalled } from './report-installed.command.ts';
import { TimesQueries } from './times.queries.ts';

/** Days of flying, in tenths; what is asked and what is done to the records in between. */
const flying = fc.record({
  perDay: fc.array(fc.nat(40), { minLength: 60, maxLength: 60 }),
  split: fc.integer({ min: 12, max: 48 }),
  readOn: fc.uniqueArray(fc.integer({ min: 11, max: 49 }), { minLength: 1, maxLength: 4 }),
});

describe('on any history that is stored', () => {
  let shop: ShopApp;
  let desk: Awaited<ReturnType<typeof actorOf>>;
  let made = 0;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    desk = await actorOf(shop, 'front-desk');
  });
  afterAll(() => shop.close());

  const start = day(-100);
  const on = (n: number) => addDays(start, n);
  type Ids = Parameters<typeof findOrCreateItem>[0];
  const inTransaction = <T>(body: (context: Ids) => Promise<T>) =>
    shop.running.app.get(Database).prisma.$transaction((tx) => body({ tx, now: new Date(), newId: v7 }));

  /** A propeller with a blade on an aircraft of its own, and how to ask for the times of both. */
  const flown = async (perDay: readonly number[]) => {
    made += 1;
    const meter = (n: number) => 1_000 + perDay.slice(0, n).reduce((sum, tenths) => sum + tenths, 0);
    const model = await readsOf(shop).unitModel.findFirstOrThrow({ where: { designation: 'Q3C-76' } });
    const customer = await readsOf(shop).customer.findFirstOrThrow({});
    const named = { maker: 'Quillon', provisionalName: null };
    const [unit, blade, clamp] = await inTransaction(async (context) => {
      const one = { ...named, kind: 'assembly' as const, modelId: model.id, partNumber: 'Q3C-76', serial: `PT${made}` };
      const two = { ...named, kind: 'blade' as const, modelId: null, partNumber: 'Q76-B', serial: `PB${made}` };
      const three = { ...two, kind: 'clamp' as const, partNumber: 'Q76-CL', serial: `PC${made}` };
      const items = [
        (await findOrCreateItem(context, one)).item,
        (await findOrCreateItem(context, two)).item,
        (await findOrCreateItem(context, three)).item,
      ] as const;
      const basis = 'declared on receipt';
      for (const { id } of items)
        await recordTimes(context, { itemId: id, on: on(5), sinceNewTenths: 700, sinceOverhaulTenths: 70, basis });
      await install(context, { itemId: items[1].id, parentId: items[0].id, position: 'blade 1', from: on(5) });
      await install(context, { itemId: items[2].id, parentId: items[1].id, position: 'clamp', from: on(5) });
      await context.tx.aircraft.create({
        data: { id: items[0].id, customerId: customer.id, registration: `ZY-${made}`, airframe: 'any', engine: 'any' },
      });
      return items;
    });
    const where = {
      itemId: unit.id,
      aircraftId: unit.id,
      position: 'single',
      meter: 'tachometer',
      basis: 'log',
    } as const;
    const interval = (from: number, to: number) =>
      shop.run(
        reportInstalled,
        { ...where, from: on(from), fromTenths: meter(from), to: on(to), toTenths: meter(to) },
        desk,
      );
    const read = (n: number) =>
      shop.run(recordReading, { aircraftId: unit.id, meter: 'tachometer', readOn: on(n), hoursTenths: meter(n) }, desk);
    const totals = async (n: number) => {
      const ask = (itemId: string) => shop.running.app.get(TimesQueries).asOf({ itemId, asOf: on(n) });
      const answers = [await ask(unit.id), await ask(blade.id), await ask(clamp.id)];
      return answers.map(({ sinceNew, sinceOverhaul }) => [sinceNew.tenths, sinceOverhaul.tenths]);
    };
    return { meter, interval, read, totals, blade, unit };
  };

  it('splitting an interval, moving the blade out and back between, or adding a reading on the line changes no total', async () => {
    await fc.assert(
      fc.asyncProperty(flying, async ({ perDay, split, readOn }) => {
        const [whole, parts] = [await flown(perDay), await flown(perDay)];
        await whole.interval(10, 50);
        await parts.interval(10, split);
        await inTransaction(async (context) => {
          const at = { itemId: parts.blade.id, on: on(split) };
          await uninstall(context, at);
          await install(context, { itemId: at.itemId, parentId: parts.unit.id, position: 'blade 2', from: at.on });
        });
        await parts.interval(split, 50);
        const sum = whole.meter(50) - whole.meter(10);
        const expected = [
          [700 + sum, 70 + sum],
          [700 + sum, 70 + sum],
          [700 + sum, 70 + sum],
        ];
        expect(await whole.totals(55)).toEqual(expected);
        expect(await parts.totals(55)).toEqual(expected);
        for (const n of readOn) {
          await whole.read(n);
          expect(await whole.totals(55)).toEqual(expected);
        }
        const at = Math.max(...readOn);
        const then = whole.meter(at) - whole.meter(10);
        expect(await whole.totals(at)).toEqual([
          [700 + then, 70 + then],
          [700 + then, 70 + then],
          [700 + then, 70 + then],
        ]);
      }),
      { numRuns: 12 },
    );
  }, 120_000);
});
