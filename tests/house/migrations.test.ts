import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import pg from 'pg';
import { applyMigrations, differenceFromSchema, knownMigrations, schemaVersionState } from '../../prisma/migrate.ts';
import { emptyDatabase, freshDatabase, type TestDatabase } from '../support/database.ts';

const onlyAdded = [
  'movements',
  'record_entries',
  'record_links',
  'sign_offs',
  'measurements',
  'releases',
  'superseded_dispositions',
  'photos',
  'struck_photos',
  'calibrations',
  'gauge_studies',
  'training_records',
  'carried_facts',
  'set_decisions',
  'peening_setups',
  'peening_checks',
  'field_balance_specs',
  'balance_hardware',
  'field_signatures',
  'field_runs',
  'field_weights',
  'governor_programs',
  'governor_readings',
  'governor_adjustments',
  'equipment_readings',
  'equipment_additions',
  'freezer_moves',
  'shop_cost_parts',
  'supplier_approvals',
  'supplier_exceptions',
  'order_revisions',
  'order_confirmations',
  'receiving_checklists',
  'lot_receipts',
  'stock_signatures',
  'surrenders',
  'supplier_returns',
  'imported_tables',
  'opening_lots',
  'allocation_policies',
  'directive_lines',
  'directive_links',
  'directive_compliances',
  'aircraft_intervals',
  'struck_readings',
  'aircraft_moves',
  'meter_changes',
  'reminder_settings',
  'reminder_choices',
  'reminder_letters',
  'reminder_letter_units',
  'reminder_events',
  'arrival_assumptions',
  'unit_uses',
  'storage_periods',
  'vendor_losses',
];

describe('migrations', () => {
  let fresh: TestDatabase;
  let empty: TestDatabase;
  let owner: pg.Client;
  let server: pg.Client;

  beforeAll(async () => {
    [fresh, empty] = [await freshDatabase(), await emptyDatabase()];
    owner = new pg.Client({ connectionString: fresh.url });
    server = new pg.Client({ connectionString: fresh.serverUrl });
    await Promise.all([owner.connect(), server.connect()]);
  });

  afterAll(async () => {
    await Promise.all([owner.end(), server.end()]);
    await Promise.all([fresh.drop(), empty.drop()]);
  });

  test('applied from nothing by two servers at once, they run once and make exactly what the schema draws', async () => {
    expect(await schemaVersionState(empty.url)).toBe('behind');
    const [one, two] = await Promise.all([applyMigrations(empty.url), applyMigrations(empty.url)]);
    expect([...one, ...two]).toEqual((await knownMigrations()).map(({ name }) => name));
    expect(await schemaVersionState(empty.url)).toBe('current');
    expect(await differenceFromSchema(empty.url)).toBeUndefined();
  });

  test('a missing column shows as a difference', async () => {
    await owner.query('ALTER TABLE customers DROP COLUMN phone');
    expect(await differenceFromSchema(fresh.url)).toContain('ADD COLUMN     "phone"');
    await owner.query("ALTER TABLE customers ADD COLUMN phone text NOT NULL DEFAULT ''");
  });

  test('an edited, an unfinished and an unknown migration are told apart, and nothing is applied over them', async () => {
    const rows = `UPDATE _prisma_migrations SET`;
    await owner.query(`${rows} checksum = reverse(checksum) WHERE migration_name LIKE '%_shop'`);
    expect(await schemaVersionState(fresh.url)).toBe('damaged');
    await expect(applyMigrations(fresh.url)).rejects.toThrow('damaged');
    await owner.query(`${rows} checksum = reverse(checksum), finished_at = NULL WHERE migration_name LIKE '%_shop'`);
    expect(await schemaVersionState(fresh.url)).toBe('damaged');
    await owner.query(
      `${rows} finished_at = now(), migration_name = '99990101000000_later' WHERE migration_name LIKE '%_shop'`,
    );
    expect(await schemaVersionState(fresh.url)).toBe('ahead');
  });

  test('every table that anchors seal by its entries has an id of its own', async () => {
    const { rows } = await owner.query(
      `SELECT attrelid::regclass::text AS name FROM pg_attribute WHERE attrelid = ANY($1::regclass[]) AND attname IN ('entry_id', 'id')
       GROUP BY attrelid HAVING count(*) FILTER (WHERE attname = 'entry_id') = 1 AND count(*) FILTER (WHERE attname = 'id') = 0`,
      [onlyAdded.filter((table) => table !== 'record_links')],
    );
    expect(rows).toEqual([]);
  });

  test.each(onlyAdded)('rows of %s are only added, whoever asks', async (table) => {
    const { rows } = await owner.query(
      `SELECT attname FROM pg_attribute WHERE attrelid = $1::regclass AND attnum > 0 LIMIT 1`,
      [table],
    );
    const change = `UPDATE ${table} SET "${rows[0].attname}" = "${rows[0].attname}"`;
    for (const statement of [change, `DELETE FROM ${table}`, `TRUNCATE ${table} CASCADE`]) {
      await expect(owner.query(statement)).rejects.toMatchObject({
        code: '23001',
        message: `Rows of ${table} are only added: they are never changed or removed.`,
      });
      await expect(server.query(statement)).rejects.toMatchObject({ code: '42501' });
    }
  });

  test('the server works as a role that owns nothing, cannot switch a guard off and cannot touch migrations', async () => {
    const { rows } = await server.query(
      'SELECT current_user AS name, count(*)::int AS owned FROM pg_class WHERE relowner = current_user::regrole',
    );
    expect(rows).toEqual([{ name: 'hubwright_server', owned: 0 }]);
    for (const statement of [
      'ALTER TABLE movements DISABLE TRIGGER ALL',
      'DROP TRIGGER "only added" ON movements',
      'SET session_replication_role = replica',
      'CREATE TABLE mine (id int)',
      "UPDATE _prisma_migrations SET checksum = ''",
    ]) {
      await expect(server.query(statement)).rejects.toMatchObject({ code: '42501' });
    }
  });

  test('tables of later migrations are open to the server too', async () => {
    await owner.query('CREATE TABLE later (id serial PRIMARY KEY)');
    await expect(server.query('INSERT INTO later DEFAULT VALUES RETURNING id')).resolves.toMatchObject({ rowCount: 1 });
  });

  test('balances, movements and the one shop are guarded by sentences', async () => {
    const id = '01890000-0000-7000-8000-000000000000';
    await owner.query('ALTER TABLE balances DROP CONSTRAINT balances_lot_id_fkey');
    await expect(owner.query('INSERT INTO balances VALUES ($1, $2, $3, -1)', [id, 'bin', 'A1'])).rejects.toMatchObject({
      constraint: 'a place cannot hold less than nothing',
    });
    const { rows } = await owner.query<{ name: string }>(
      `SELECT conname AS name FROM pg_constraint WHERE contype = 'c' AND connamespace = 'public'::regnamespace ORDER BY 1`,
    );
    expect(rows.length).toBeGreaterThan(30);
    expect(rows.filter(({ name }) => !/^(a|an|the|there|rates|days|hours|work) .* /.test(name))).toEqual([]);
  });

  test('what may be open only once is guarded by an index', async () => {
    const { rows } = await owner.query<{ name: string }>(
      `SELECT indexrelid::regclass::text AS name FROM pg_index WHERE indisunique AND indpred IS NOT NULL ORDER BY 1`,
    );
    expect(rows.map(({ name }) => name.replaceAll('"', ''))).toEqual([
      'a bin is counted by one person',
      'a count of a lot waits once',
      'a day is a shop holiday once',
      'a document has one current issue',
      'a governor test has one open run',
      'a lot is under one suspicion',
      'a machine holds one media lot',
      'a manual has one current revision',
      'a model has one kit list waiting',
      'a part is in one open load',
      'a part is in one open peening lot',
      'a part is in the oven once',
      'a part is installed in one place',
      'a person carries one badge',
      'a person changes shifts once a day',
      'a person has one clock running',
      'a position holds one part',
      'a propeller has one balance under way',
      'a unit is in the shop once',
    ]);
  });
});
