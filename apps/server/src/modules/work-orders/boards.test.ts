import { workOrderOperations as op } from '@hubwright/contracts/work-orders/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { threeBlade } from '../../../../../tests/support/arrivals.ts';
import { actorOf, as } from '../../../../../tests/support/people.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';
import { receiveUnit } from './receive-unit.command.ts';

// Noon in the shop's zone on the 25th; the first instant of the shop's 1 October is five in the morning UTC.
const clock = { now: () => new Date('2027-03-25T17:00:00.000Z') };

describe('the boards', () => {
  let shop: ShopApp;
  let manager: Visitor;
  let client: pg.Client;
  const ids: string[] = [];

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    manager = await as(shop, 'manager');
    client = new pg.Client({ connectionString: shop.databaseUrl });
    await client.connect();
    const desk = await actorOf(shop, 'front-desk');
    for (let unit = 0; unit < 6; unit++)
      ids.push((await shop.run(receiveUnit, await threeBlade(shop, `QP50${unit}`), desk)).id);
  });
  afterAll(async () => {
    await client.end();
    await shop.close();
  });

  /** How a work order got there is another test's story. */
  const set = (unit: number, columns: string, values: unknown[]) =>
    client.query(`UPDATE work_orders SET ${columns} WHERE id = $1`, [ids[unit], ...values]);

  it('turnaround counts finished units by the shop’s month: median, longest, promises kept', async () => {
    const shipped = "stage = 'shipped', consent = 'approved', received_on = $2, shipped_at = $3, promised_on = $4";
    await set(0, shipped, ['2027-01-10', '2027-01-20T18:00:00Z', '2027-01-20']);
    await set(1, shipped, ['2027-01-02', '2027-02-01T05:59:59Z', '2027-01-30']);
    await set(2, shipped, ['2027-02-01', '2027-02-01T06:00:00Z', null]);
    await set(3, shipped.replace('approved', 'declined'), ['2027-02-01', '2027-02-20T06:00:00Z', null]);
    const { body } = await manager.call(op.managerBoard, { months: 3 });
    expect(body.turnaround).toEqual([
      { month: '2027-01', scope: 'overhaul', units: 2, medianDays: 20, longestDays: 29, kept: 1, promised: 2 },
      { month: '2027-02', scope: 'overhaul', units: 1, medianDays: 0, longestDays: 0, kept: 0, promised: 0 },
    ]);
    const narrow = await manager.call(op.managerBoard, { months: 2 });
    expect(narrow.body.turnaround.map((row) => row.month)).toEqual(['2027-02']);
    expect(body.units.map((unit) => unit.workOrder.id).sort()).toEqual([ids[4], ids[5]]);
  });

  it('a promise is at risk when its day is near and the work is not nearly done, or has passed', async () => {
    const promise = "promised_on = $2, stage = $3, consent = 'approved'";
    const atRisk = async () => {
      const { body } = await manager.call(op.deskBoard, {});
      return body.promisesAtRisk.map((unit) => [unit.workOrder.id, unit.daysLeft]);
    };
    await set(4, promise, ['2027-03-29', 'build']);
    await set(5, promise, ['2027-03-28', 'final-inspection']);
    expect(await atRisk()).toEqual([]);
    await set(4, promise, ['2027-03-28', 'build']);
    expect(await atRisk()).toEqual([[ids[4], 3]]);
    await set(5, promise, ['2027-03-24', 'final-inspection']);
    expect(new Map((await atRisk()) as [string, number][])).toEqual(
      new Map([
        [ids[4], 3],
        [ids[5], -1],
      ]),
    );
    const { body } = await manager.call(op.managerBoard, {});
    expect(body.units.find((unit) => unit.workOrder.id === ids[5])).toMatchObject({ late: true, ball: 'inspector' });
  });
});
