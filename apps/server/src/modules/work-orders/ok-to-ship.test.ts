import { workOrderOperations as op } from '@hubwright/contracts/work-orders/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { readsOf, threeBlade } from '../../../../../tests/support/arrivals.ts';
import { actorOf, as } from '../../../../../tests/support/people.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';
import { placeHold } from './place-hold.command.ts';
import { receiveUnit } from './receive-unit.command.ts';

describe('OK to ship is the desk’s word, beside the release', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let client: pg.Client;
  let workOrderId: string;

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    desk = await as(shop, 'front-desk');
    client = new pg.Client({ connectionString: shop.databaseUrl });
    await client.connect();
    const clerk = await actorOf(shop, 'front-desk');
    workOrderId = (await shop.run(receiveUnit, await threeBlade(shop, 'QP601', { looseItems: [] }), clerk)).id;
  });
  afterAll(async () => {
    await client.end();
    await shop.close();
  });

  const ask = async (more: object = {}) => {
    const { version } = await readsOf(shop).workOrder.findUniqueOrThrow({ where: { id: workOrderId } });
    return desk.call(op.okToShip, { workOrderId, ...more }, { version });
  };

  it('is refused until the inspector has released the unit', async () => {
    expect((await ask()).body.type).toBe('/problems/not-released');
    expect((await ask({ taggedUnserviceable: true })).body.type).toBe('/problems/not-released');
  });

  it('is refused while a hold is open, although the unit is released', async () => {
    // How it was released is another test's story.
    await client.query("UPDATE work_orders SET stage = 'released', consent = 'approved' WHERE id = $1", [workOrderId]);
    const hold = { workOrderId, kind: 'paperwork' as const, reason: 'export papers', liftedByRole: 'manager' as const };
    const manager = await actorOf(shop, 'manager');
    const { holdId } = await shop.run(placeHold, hold, manager);
    expect((await ask()).body).toMatchObject({ type: '/problems/work-held', holds: [{ kind: 'paperwork' }] });
    const lifter = await as(shop, 'manager');
    expect((await lifter.call(op.liftHold, { holdId, reason: 'papers came' })).status).toBe(200);
  });

  it('for a customer on hold for unpaid bills is the shop’s choice, with a reason that is kept', async () => {
    await client.query("UPDATE customers SET unpaid_hold = true WHERE code = 'BRACKEN'");
    const refused = await ask();
    expect([refused.status, refused.body.errors]).toMatchObject([409, [{ pointer: '/unpaidReason' }]]);
    expect((await ask({ unpaidReason: 'they pay on delivery' })).status).toBe(200);
    const entry = await client.query(
      "SELECT body FROM record_entries WHERE command = 'ok-to-ship' ORDER BY at DESC LIMIT 1",
    );
    expect(JSON.parse(entry.rows[0].body)).toMatchObject({ reason: 'they pay on delivery', facts: { unpaid: true } });
    expect(await readsOf(shop).workOrder.findUnique({ where: { id: workOrderId } })).toMatchObject({
      stage: 'released',
      shippedAt: null,
    });
  });
});
