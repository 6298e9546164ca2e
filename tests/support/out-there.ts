import pg from 'pg';
import { KeptDue } from '../../apps/server/src/modules/due-dates/kept-due.ts';
import { receiveUnit } from '../../apps/server/src/modules/work-orders/receive-unit.command.ts';
import { readsOf, threeBlade } from './arrivals.ts';
import { actorOf } from './people.ts';
import type { ShopApp } from './shop-app.ts';

/** A propeller this shop overhauled on a day long ago and sent home: its months run since. By customer's code. */
export interface OutThere {
  readonly serial: string;
  readonly overhauledOn: string;
  readonly customer?: string;
  /** On the charter’s single: airframe hours it has flown since, so that hours may govern. */
  readonly flown?: number;
}

/** Units out there. The years that lie between are put in past the commands: only time brings them. Answers their ids. */
export async function outThere(shop: ShopApp, units: readonly OutThere[]): Promise<string[]> {
  const desk = await actorOf(shop, 'front-desk');
  const client = new pg.Client({ connectionString: shop.databaseUrl });
  await client.connect();
  const ids: string[] = [];
  for (const { serial, overhauledOn, customer = 'BRACKEN', flown } of units) {
    const { id: customerId } = await readsOf(shop).customer.findUniqueOrThrow({ where: { code: customer } });
    const { aircraftId, ...arrival } = await threeBlade(shop, serial, { customerId });
    const order = await shop.run(receiveUnit, { ...arrival, ...(flown ? { aircraftId } : {}) }, desk);
    const { rows } = await client.query<{ unit_id: string }>(
      `UPDATE work_orders SET stage = 'shipped', received_on = $2::date - 30, closed_at = now() WHERE id = $1 RETURNING unit_id::text`,
      [order.id, overhauledOn],
    );
    const unitId = rows[0]?.unit_id ?? '';
    await overhauled(client, unitId, { on: overhauledOn, aircraftId: aircraftId ?? '', flown });
    ids.push(unitId);
  }
  await client.end();
  await shop.running.app.get(KeptDue).whole();
  return ids;
}

async function overhauled(
  client: pg.Client,
  unitId: string,
  { on, aircraftId, flown }: { on: string; aircraftId: string; flown: number | undefined },
): Promise<void> {
  await client.query(
    `INSERT INTO time_records (id, item_id, recorded_on, since_overhaul_tenths, basis, recorded_at, meter, meter_tenths)
     SELECT gen_random_uuid(), $1, $2, 0, 'overhaul', now(), CASE WHEN $4::int IS NULL THEN NULL ELSE 'airframe' END,
       (SELECT max(hours_tenths) - $4::int * 10 FROM aircraft_readings WHERE aircraft_id = $3 AND meter = 'airframe')`,
    [unitId, on, aircraftId, flown ?? null],
  );
}
