import { join } from 'node:path';
import { mayPurge, purgeableFrom, type RetentionRule } from '@hubwright/rules/retention';
import pg from 'pg';
import { systemIds } from '../../platform/command/ids.ts';
import type { PurgeBody } from '../../platform/records/check-purges.ts';
import { purge, removeFiles } from '../../platform/records/purge.ts';
import { KeyFolder } from '../../platform/records/shop-key.ts';
import { takeAnchor } from '../../platform/records/take-anchor.ts';
import { verifyDatabase } from '../../platform/records/verify-database.ts';
import { balanceChains, balanceRows, closedBalancesSql } from './purge-field-balance.ts';

export interface PurgePlaces {
  /** The owner of the tables: the running server's role may destroy nothing. */
  readonly url: string;
  readonly dataFolder: string;
}
/** A closed work order or balance on the aircraft, and from when its records may be destroyed. */
export interface Purgeable {
  readonly kind: 'work order' | 'balance on the aircraft';
  readonly id: string;
  readonly number: string;
  readonly approvedOn: string;
  readonly from: string;
}
/** Why nothing was destroyed. */
export class PurgeRefused extends Error {}

/** Closed orders whose records may be destroyed today, oldest first. */
export async function listPurgeable(url: string, today: string): Promise<Purgeable[]> {
  return withClient(url, async (client) => {
    const rules = await rulesOf(client);
    const closed = await closedOrders(client, null);
    return closed
      .map((order) => ({ ...order, from: purgeableFrom(order.approvedOn, rules) }))
      .filter(({ from }) => from <= today);
  });
}

/**
 * Destroys the signed records of one closed order. Of a work order its chains and those of its travelers, findings, kits, quotes,
 * releases and photos, signatures, measurements, printed papers, pictures; of a balance on the aircraft its chain, signatures, runs and
 * weights. The order's number, unit and days stay as an index line; entries that a part, lot or person's own chain holds stay until that one's turn. @throws PurgeRefused; then nothing was destroyed
 */
export async function purgeOrder(
  { url, dataFolder }: PurgePlaces,
  request: { number: string; by: string; at: Date; today: string },
): Promise<PurgeBody> {
  const keys = new KeyFolder(join(dataFolder, 'keys'));
  const filesFolder = join(dataFolder, 'files');
  await takeAnchor(url, keys, request.at);
  const { faults } = await verifyDatabase(url, filesFolder);
  if (faults[0])
    throw new PurgeRefused(`The records do not hold, so nothing is destroyed: ${faults[0].place}: ${faults[0].reason}`);
  return withClient(url, async (client) => {
    const rules = await rulesOf(client);
    const order = await agreed(client, { ...request, rules });
    const newest = await client.query<{ id: string }>('SELECT id FROM shop_keys ORDER BY sequence DESC LIMIT 1');
    const key = await keys.find(newest.rows[0]?.id ?? '');
    if (!key) throw new PurgeRefused('The shop’s key is not here: a purge could not be signed.');
    const isBalance = order.kind === 'balance on the aircraft';
    const files = isBalance ? [] : await filesOf(client, order);
    const proof = await purge(
      client,
      {
        id: systemIds.next(),
        at: request.at,
        by: request.by,
        policy: policyOf(rules, order),
        what: `${order.kind} ${order.number}`,
        chains: isBalance ? balanceChains(order.id) : await chainsOf(client, order.id),
        rows: isBalance ? await balanceRows(client, order.id) : await rowsOf(client, order.id),
        files,
      },
      key,
    );
    await removeFiles(filesFolder, files);
    return proof;
  });
}

function policyOf(rules: readonly RetentionRule[], { approvedOn }: Purgeable): string {
  const kept = rules.map(({ approval, years }) => `${approval} ${years} years`).join(', ');
  return `${kept}; approved ${approvedOn}, may be destroyed from ${purgeableFrom(approvedOn, rules)}`;
}

async function agreed(
  client: pg.Client,
  { number, by, today, rules }: { number: string; by: string; today: string; rules: readonly RetentionRule[] },
): Promise<Purgeable> {
  const { rowCount } = await client.query(
    `SELECT 1 FROM people WHERE sign_in_name = $1 AND active AND 'administrator' = ANY (roles)`,
    [by],
  );
  if (!rowCount) throw new PurgeRefused(`${by} is not an administrator of this shop.`);
  const [order] = await closedOrders(client, number);
  if (!order) throw new PurgeRefused(`${number} is not a closed work order, and not a balance that ended.`);
  const from = purgeableFrom(order.approvedOn, rules);
  if (!mayPurge(order.approvedOn, rules, today))
    throw new PurgeRefused(`The records of ${number} are kept until ${from}: approved on ${order.approvedOn}.`);
  return { ...order, from };
}

async function rulesOf(client: pg.Client): Promise<RetentionRule[]> {
  const { rows } = await client.query<{ rules: RetentionRule[] }>('SELECT retention_rules AS rules FROM shop_profile');
  return rows[0]?.rules ?? [];
}

/** Time runs from the newest approval for return to service, or from the closing when nothing was released. */
async function closedOrders(client: pg.Client, number: string | null): Promise<Omit<Purgeable, 'from'>[]> {
  const { rows } = await client.query<Omit<Purgeable, 'from'>>(
    `SELECT 'work order' AS kind, w.id, w.number, (coalesce(max(r.released_at), w.closed_at) AT TIME ZONE (SELECT zone FROM shop_profile))::date::text AS "approvedOn"
     FROM work_orders w LEFT JOIN releases r ON r.work_order_id = w.id
     WHERE w.closed_at IS NOT NULL AND ($1::text IS NULL OR w.number = $1)
       AND EXISTS (SELECT 1 FROM record_links l WHERE l.subject_kind = 'work-order' AND l.subject_id = w.id)
     GROUP BY w.id UNION ALL ${closedBalancesSql} ORDER BY 4, 3 LIMIT 1000`,
    [number],
  );
  return rows;
}

async function chainsOf(client: pg.Client, workOrderId: string): Promise<{ kind: string; id: string }[]> {
  const { rows } = await client.query<{ kind: string; id: string }>(
    `SELECT 'work-order' AS kind, $1::uuid AS id
     UNION ALL SELECT 'traveler', id FROM travelers WHERE work_order_id = $1 UNION ALL SELECT 'finding', id FROM findings WHERE work_order_id = $1
     UNION ALL SELECT 'kit', id FROM kits WHERE work_order_id = $1 UNION ALL SELECT 'quote', id FROM quotes WHERE work_order_id = $1
     UNION ALL SELECT 'release', id FROM releases WHERE work_order_id = $1 UNION ALL SELECT 'photo', id FROM photos WHERE work_order_id = $1
     UNION ALL SELECT 'governor-run', id FROM governor_runs WHERE work_order_id = $1
     UNION ALL SELECT 'lot', id FROM lots WHERE work_order_id = $1`,
    [workOrderId],
  );
  return rows;
}

async function rowsOf(client: pg.Client, workOrderId: string): Promise<{ table: string; ids: string[] }[]> {
  const ids = async (sql: string) => (await client.query<{ id: string }>(sql, [workOrderId])).rows.map(({ id }) => id);
  return [
    {
      table: 'measurements',
      ids: await ids(
        'SELECT m.id FROM measurements m JOIN sign_offs s ON s.id = m.sign_off_id WHERE s.work_order_id = $1',
      ),
    },
    {
      table: 'superseded_dispositions',
      ids: await ids(
        'SELECT d.id FROM superseded_dispositions d JOIN findings f ON f.id = d.finding_id WHERE f.work_order_id = $1',
      ),
    },
    ...(await Promise.all(
      ['governor_readings', 'governor_adjustments'].map(async (table) => ({
        table,
        ids: await ids(
          `SELECT b.id FROM ${table} b JOIN governor_runs r ON r.id = b.run_id WHERE r.work_order_id = $1`,
        ),
      })),
    )),
    { table: 'governor_runs', ids: await ids('SELECT id FROM governor_runs WHERE work_order_id = $1') },
    { table: 'shop_cost_parts', ids: await ids('SELECT id FROM shop_cost_parts WHERE work_order_id = $1') },
    ...(await stockRows(ids)),
    { table: 'vendor_losses', ids: await ids('SELECT id FROM vendor_losses WHERE work_order_id = $1') },
    { table: 'set_decisions', ids: await ids('SELECT id FROM set_decisions WHERE work_order_id = $1') },
    {
      table: 'struck_photos',
      ids: await ids('SELECT s.id FROM struck_photos s JOIN photos p ON p.id = s.photo_id WHERE p.work_order_id = $1'),
    },
    { table: 'photos', ids: await ids('SELECT id FROM photos WHERE work_order_id = $1') },
    { table: 'releases', ids: await ids('SELECT id FROM releases WHERE work_order_id = $1') },
    { table: 'sign_offs', ids: await ids('SELECT id FROM sign_offs WHERE work_order_id = $1') },
  ];
}

/** What was signed and written down about the parts that came off the unit. */
async function stockRows(ids: (sql: string) => Promise<string[]>): Promise<{ table: string; ids: string[] }[]> {
  return Promise.all(
    ['stock_signatures', 'surrenders'].map(async (table) => ({
      table,
      ids: await ids(`SELECT s.id FROM ${table} s JOIN lots l ON l.id = s.lot_id WHERE l.work_order_id = $1`),
    })),
  );
}

/** Printed releases, photos and their thumbnails that no other work order, and no training, names. */
async function filesOf(client: pg.Client, order: { id: string; number: string }): Promise<string[]> {
  const { rows } = await client.query<{ hash: string; sent: boolean }>(
    `WITH named AS (
       SELECT work_order_id, file_hash AS hash FROM releases
       UNION SELECT work_order_id, file_hash FROM photos
       UNION SELECT work_order_id, thumbnail_file_hash FROM photos WHERE thumbnail_file_hash IS NOT NULL)
     SELECT n.hash, EXISTS (SELECT 1 FROM staged_files s WHERE n.hash IN (s.hash, s.thumbnail_hash)) AS sent
     FROM named n WHERE n.work_order_id = $1
       AND NOT EXISTS (SELECT 1 FROM named o WHERE o.hash = n.hash AND o.work_order_id <> $1)
       AND NOT EXISTS (SELECT 1 FROM training_records t WHERE t.paper_hash = n.hash) ORDER BY 1`,
    [order.id],
  );
  // A file that someone sent again today waits for its record: its bytes cannot go under it.
  if (rows.some(({ sent }) => sent))
    throw new PurgeRefused(`A file of ${order.number} was sent again within the last day: try tomorrow.`);
  return rows.map(({ hash }) => hash);
}

async function withClient<T>(url: string, use: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await use(client);
  } finally {
    await client.end();
  }
}
