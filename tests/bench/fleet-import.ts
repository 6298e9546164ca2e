import { randomUUID } from 'node:crypto';
import { addDays, addMonths } from '@hubwright/rules/dates';
import pg from 'pg';
import { sendTable } from '../support/tables.ts';
import { median } from './load.ts';
import { type BenchShop, signIn } from './shop.ts';

/** Aircraft in a table, with a propeller each; 3,000 rows are the most a table may have. */
const sizes = (process.env.FLEET_ROWS ?? '60,3000').split(',').map(Number);
const day = '2026-11-20';

interface Plane {
  readonly registration: string;
  readonly serial: string;
  readonly overhauledOn: string;
  readonly installedOn: string;
  readonly meterThen: number;
  readonly reading: number;
}

/** Never the same planes twice: what is on record already would be compared and not written. */
function fleet(count: number, round: number): Plane[] {
  return Array.from({ length: count }, (_, i) => {
    const overhauledOn = addMonths(day, -(6 + (i % 60)));
    return {
      // At most ten characters.
      registration: `Z${round.toString(36)}${count.toString(36)}-${i.toString(36)}`.toUpperCase(),
      ...{ serial: `BF${round}-${count}-${i}`, overhauledOn, installedOn: addDays(overhauledOn, 14) },
      ...{ meterThen: 10_000 + 7 * i, reading: 10_500 + 7 * i + 37 * (i % 60) },
    };
  });
}

const hours = (tenths: number) => (tenths / 10).toFixed(1);

function fileOf(planes: readonly Plane[]): string {
  const lines = planes.map((one) =>
    [
      ...[one.registration, 'Heronby Courser 4', 'Brindle B-540', 'Q3C-76', one.serial, one.installedOn, 'tachometer'],
      ...[hours(one.meterThen), '2000.0', '0.0', one.overhauledOn, hours(one.reading), day],
    ].join(','),
  );
  const head =
    'registration,airframe,engine,model,serial,installed on,meter,meter at installation,time since new at installation,time since overhaul at installation,last overhaul on,current reading,read on';
  return [head, ...lines].join('\r\n');
}

/** The same rows in as many statements, by hand, in one transaction: $1 the planes, $2 the customer or whoever records it. */
const twin = [
  `INSERT INTO aircraft (id, customer_id, registration, airframe, engine)
   SELECT x.aircraft, $2, x.registration, 'Heronby Courser 4', 'Brindle B-540' FROM jsonb_to_recordset($1::jsonb) AS x (aircraft uuid, registration text)`,
  `INSERT INTO serialized_items (id, kind, model_id, maker, part_number, serial, created_at)
   SELECT x.item, 'assembly', m.id, m.maker, m.designation, x.serial, now() FROM jsonb_to_recordset($1::jsonb) AS x (item uuid, serial text)
   JOIN unit_models m ON m.designation = 'Q3C-76'`,
  `INSERT INTO aircraft_intervals (id, interval_id, item_id, aircraft_id, position, meter, from_date, from_tenths, basis, recorded_by, recorded_at)
   SELECT x.interval, x.interval, x.item, x.aircraft, 'single', 'tachometer', x."installedOn", x."meterThen", 'bench', $2, now()
   FROM jsonb_to_recordset($1::jsonb) AS x (interval uuid, item uuid, aircraft uuid, "installedOn" date, "meterThen" int)`,
  `INSERT INTO time_records (id, item_id, recorded_on, since_new_tenths, since_overhaul_tenths, meter, meter_tenths, basis, interval_id, recorded_at)
   SELECT uuidv7(), x.item, CASE b WHEN 'overhaul' THEN x."overhauledOn" ELSE x."installedOn" END, CASE b WHEN 'overhaul' THEN NULL ELSE 20000 END,
     CASE b WHEN 'overhaul' THEN NULL ELSE 0 END, 'tachometer', x."meterThen", b, x.interval, now()
   FROM jsonb_to_recordset($1::jsonb) AS x (interval uuid, item uuid, "overhauledOn" date, "installedOn" date, "meterThen" int),
     unnest('{overhaul,declared in a table of its owner}'::text[]) b`,
  `INSERT INTO aircraft_readings (id, aircraft_id, meter, hours_tenths, read_on, recorded_at)
   SELECT uuidv7(), x.aircraft, 'tachometer', x.reading, '${day}', now() FROM jsonb_to_recordset($1::jsonb) AS x (aircraft uuid, reading int)`,
];

async function byHand(sql: pg.Client, planes: readonly Plane[], customerId: string): Promise<number> {
  const rows = planes.map((one) => ({ ...one, aircraft: randomUUID(), item: randomUUID(), interval: randomUUID() }));
  const { rows: people } = await sql.query('SELECT id FROM people LIMIT 1');
  const given = JSON.stringify(rows);
  const second = [customerId, undefined, people[0].id];
  const began = performance.now();
  await sql.query('BEGIN');
  for (const [at, statement] of twin.entries())
    await sql.query(statement, [given, ...(second[at] ? [second[at]] : [])]);
  await sql.query('COMMIT');
  return performance.now() - began;
}

/** A customer's table sent, looked at and taken over, against the same rows written by hand. Real time: a person waits. */
export async function fleetImportRows(shop: BenchShop, port: number, rounds: number): Promise<string[][]> {
  const sql = new pg.Client({ connectionString: shop.environment.DATABASE_URL });
  await sql.connect();
  try {
    const customer = await sql.query<{ id: string }>('SELECT id FROM customers ORDER BY code LIMIT 1');
    const desk = { port, cookie: await signIn(port, 'desk'), customerId: customer.rows[0]?.id ?? '' };
    const figures: string[][] = [];
    for (const size of sizes) {
      const runs: ({ twin: number } & Awaited<ReturnType<typeof imported>>)[] = [];
      for (let round = 0; round < rounds; round += 1)
        runs.push({
          ...(await imported(desk, fleet(size, 2 * round))),
          twin: await byHand(sql, fleet(size, 2 * round + 1), desk.customerId),
        });
      const of = (which: 'sent' | 'preview' | 'apply' | 'again') => runs.map((run) => run[which]);
      const twins = runs.map((run) => run.twin);
      const names = {
        sent: 'sent and read',
        preview: 'preview',
        apply: 'taken over',
        again: 'preview of the same again',
      };
      for (const [which, name] of Object.entries(names))
        figures.push(
          rowOf(`a fleet's table, ${name} (twin: the same rows by hand)`, of(which as 'sent'), { twins, size }),
        );
    }
    return figures;
  } finally {
    await sql.end();
  }
}

function rowOf(
  what: string,
  own: readonly number[],
  { twins, size }: { twins: readonly number[]; size: number },
): string[] {
  const [ours, theirs] = [median(own), median(twins)];
  const spread = `${Math.min(...own).toFixed(0)} to ${Math.max(...own).toFixed(0)} ms; ${(ours / theirs).toFixed(1)} × the twin`;
  return [
    what,
    `${ours.toFixed(0)} ms`,
    `${theirs.toFixed(0)} ms`,
    (theirs / ours).toFixed(2),
    spread,
    `${size} aircraft`,
  ];
}

interface Desk {
  readonly port: number;
  readonly cookie: string;
  readonly customerId: string;
}

async function imported(desk: Desk, planes: readonly Plane[]) {
  const bytes = fileOf(planes);
  const address = `http://127.0.0.1:${desk.port}`;
  const path = `/api/customers/${desk.customerId}/fleet-tables/fleet`;
  const send = () => sendTable({ address }, desk, { kind: 'fleet', bytes, path });
  const call = async (url: string, body?: object) => {
    const headers = { cookie: desk.cookie, 'content-type': 'application/json', 'idempotency-key': randomUUID() };
    const answer = await fetch(`${address}${url}`, {
      headers,
      ...(body ? { method: 'POST', body: JSON.stringify(body) } : {}),
    });
    if (!answer.ok) throw new Error(`${url} answered ${answer.status}: ${(await answer.text()).slice(0, 300)}`);
    return (await answer.json()) as { counts: Record<string, number>; mapping: object };
  };
  const [sent, table] = await timed(send);
  const at = (id: string) => `/api/fleet-tables/${id}/preview?limit=50`;
  const [preview, shown] = await timed(() => call(at(table.body.id)));
  if (shown.counts.new !== planes.length) throw new Error(`not all rows are new: ${JSON.stringify(shown.counts)}`);
  const { mapping } = shown;
  const [apply] = await timed(() => call(`/api/fleet-tables/${table.body.id}/application`, { mapping }));
  const twice = await send();
  const [again, same] = await timed(() => call(at(twice.body.id)));
  if (same.counts.same !== planes.length) throw new Error(`not all rows are the same: ${JSON.stringify(same.counts)}`);
  return { sent, preview, apply, again };
}

async function timed<T>(work: () => Promise<T>): Promise<[number, T]> {
  const began = performance.now();
  const answer = await work();
  return [performance.now() - began, answer];
}
