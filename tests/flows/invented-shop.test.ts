import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addDays } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { instruments } from '../../seed/data/instruments.ts';
import { seedShop } from '../../seed/index.ts';
import { freshDatabase, type TestDatabase } from '../support/database.ts';
import { day } from '../support/days.ts';

// The whole year takes about 1,700 commands; a machine that does other things meanwhile needs its time.
const patience = 600_000;

describe('the invented shop', () => {
  let database: TestDatabase;
  let client: pg.Client;
  let filesFolder: string;
  const today = day(0);

  beforeAll(async () => {
    database = await freshDatabase('empty');
    filesFolder = await mkdtemp(join(tmpdir(), 'hubwright-invented-'));
    await seedShop(database.url, { today, filesFolder });
    client = new pg.Client({ connectionString: database.url });
    await client.connect();
  }, patience);
  afterAll(async () => {
    await client?.end();
    await rm(filesFolder, { recursive: true, force: true });
    await database?.drop();
  });

  const column = async (sql: string, parameters: unknown[] = []) =>
    (await client.query<{ value: unknown }>(sql, parameters)).rows.map(({ value }) => value);

  it('plays without one refusal, and its record chains are whole', async () => {
    expect(await column('SELECT command AS value FROM refusals')).toEqual([]);
    const report = await verifyDatabase(database.url);
    expect(report.faults).toEqual([]);
  });

  it('has units at every stage of the way, and finished ones in several months', async () => {
    const stages = await column('SELECT DISTINCT stage AS value FROM work_orders');
    expect(stages).toEqual(
      expect.arrayContaining([
        ...['received', 'teardown', 'inspected', 'in-work', 'build', 'final-inspection', 'released', 'closed'],
        'returning-unrepaired',
      ]),
    );
    const months = await column(
      "SELECT DISTINCT to_char(shipped_at, 'YYYY-MM') AS value FROM work_orders WHERE closed_at IS NOT NULL",
    );
    expect(months.length).toBeGreaterThanOrEqual(4);
  });

  const troubles: readonly [string, string][] = [
    [
      'a trainee’s step with the supervisor’s signature beside it',
      `SELECT o.id AS value FROM sign_offs o JOIN sign_offs c ON c.countersigns_id = o.id WHERE o.signed_at < $1::date`,
    ],
    [
      'someone away today',
      'SELECT a.id AS value FROM absences a WHERE $1::date BETWEEN a."from" AND a."to" AND a.cancelled_at IS NULL',
    ],
    [
      'training that runs out within a month',
      'SELECT r.id AS value FROM training_records r WHERE r.due_on BETWEEN $1::date AND $1::date + 30',
    ],
    [
      'an expired seal on the shelf',
      `SELECT l.code AS value FROM lots l JOIN parts p ON p.id = l.part_id JOIN balances b ON b.lot_id = l.id
      WHERE p.class = 'seal' AND l.expires_on <= $1::date AND b.place_kind = 'bin' AND b.on_hand > 0`,
    ],
    [
      'a kit that is short of a part which is on order and late',
      `SELECT k.code AS value FROM kits k JOIN kit_lines kl ON kl.kit_id = k.id
      JOIN purchase_order_lines o ON o.part_id = kl.part_id AND o.received < o.quantity AND o.due_on < $1::date
      WHERE k.state = 'open' AND kl.source = 'new' AND NOT EXISTS (SELECT FROM reservations r WHERE r.kit_line_id = kl.id)
        AND EXISTS (SELECT FROM reservations r JOIN kit_lines other ON other.id = r.kit_line_id WHERE other.kit_id = k.id)`,
    ],
    [
      'a rejected hub',
      `SELECT f.number AS value FROM findings f JOIN travelers t ON t.id = f.traveler_id
      WHERE t.part_class = 'hub' AND f.disposition = 'reject' AND $1::date IS NOT NULL`,
    ],
    [
      'an approval that is overdue',
      `SELECT q.number AS value FROM quotes q JOIN chasers c ON c.quote_id = q.id
      WHERE q.state = 'sent' AND c.sent_at IS NULL AND c.due_on < $1::date`,
    ],
    [
      'work whose manual revision was superseded',
      `SELECT w.number AS value FROM work_orders w JOIN manual_revisions r ON r.id = w.revision_id
      WHERE w.stage = 'in-work' AND r.state = 'superseded' AND $1::date IS NOT NULL`,
    ],
    [
      'over-and-above work with the customer',
      `SELECT number AS value FROM quotes WHERE kind = 'over-and-above' AND state = 'sent' AND $1::date IS NOT NULL`,
    ],
    [
      'a serial nobody could read',
      'SELECT provisional_name AS value FROM serialized_items WHERE serial IS NULL AND $1::date IS NOT NULL',
    ],
    [
      'an instrument past its last good day',
      'SELECT tag AS value FROM instruments WHERE calibration_due_on < $1::date',
    ],
    [
      'a released peening lot',
      `SELECT number AS value FROM peening_lots WHERE state = 'released' AND closed_at < $1::date`,
    ],
    [
      'a held peening lot with its blades at three places',
      `SELECT l.number AS value FROM peening_lots l JOIN peening_parts p ON p.lot_id = l.id AND p.open JOIN traveler_steps s ON s.id = p.step_id
      WHERE l.state = 'held' AND $1::date IS NOT NULL GROUP BY l.number HAVING count(DISTINCT (
        SELECT o.title FROM traveler_steps o WHERE o.traveler_id = s.traveler_id AND o.state = 'open' ORDER BY o.sequence LIMIT 1)) = 3`,
    ],
    [
      'peening media whose newest check holds',
      `SELECT m.code AS value FROM peening_media m JOIN peening_checks c ON c.media_id = m.id
      WHERE m.taken_out_at IS NULL AND c.passed AND c.checked_at > $1::date - m.every_days`,
    ],
    [
      'a customer who wants no reminder letters',
      `SELECT c.code AS value FROM reminder_choices r JOIN customers c ON c.id = r.customer_id WHERE NOT r.wants_letters AND r.said_on < $1::date`,
    ],
    [
      'a reminder letter that was posted, of units that come due',
      `SELECT l.number AS value FROM reminder_letters l JOIN reminder_deliveries d ON d.letter_id = l.id
      WHERE d.state = 'posted' AND (SELECT count(*) FROM reminder_letter_units u WHERE u.letter_id = l.id AND u.due_on > $1::date) = 2`,
    ],
    ['an authorisation that expired', 'SELECT process AS value FROM authorisations WHERE expires_on <= $1::date'],
  ];
  it.each(troubles)('has %s', async (_, sql) => {
    expect(await column(sql, [today])).not.toEqual([]);
  });

  it('has twelve customers, six models and more than sixty part numbers', async () => {
    const count = async (table: string) => Number((await column(`SELECT count(*) AS value FROM ${table}`))[0]);
    const customers = await count('customers');
    const models = await count('unit_models');
    const parts = await count('parts');
    expect([customers, models]).toEqual([12, 6]);
    expect(parts).toBeGreaterThan(60);
  });

  it('never holds anything that lies after now', async () => {
    const [last] = await column('SELECT max(at)::text AS value FROM record_entries');
    expect(Date.parse(String(last))).toBeLessThan(Date.now());
  });
});

/** The day a template was filled as of, which may be yesterday by now: every date in it is counted from there. */
async function dayOf({ url }: TestDatabase): Promise<string> {
  const [{ tag, due } = { tag: '', due: 0 }] = instruments;
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const { rows } = await client.query<{ on: string }>(
    'SELECT calibration_due_on::text AS on FROM instruments WHERE tag = $1',
    [tag],
  );
  await client.end();
  return addDays(rows[0]?.on ?? '', -due);
}

describe('the invented shop’s reference data', () => {
  it(
    'comes out the same however often it is played',
    async () => {
      const { fillTestShop } = await import('../../seed/test-shop.ts');
      const [kept, anew] = [await freshDatabase('shop'), await freshDatabase('empty')];
      await fillTestShop(anew.url, await dayOf(kept));
      const heads = async ({ url }: TestDatabase) => {
        const client = new pg.Client({ connectionString: url });
        await client.connect();
        const { rows } = await client.query(
          'SELECT subject_kind, subject_id, sequence, hash FROM record_heads ORDER BY 1, 2',
        );
        await client.end();
        return rows;
      };
      const [first, second] = [await heads(kept), await heads(anew)];
      expect(first.length).toBeGreaterThan(100);
      expect(second).toEqual(first);
      await Promise.all([kept.drop(), anew.drop()]);
    },
    patience,
  );
});
