import type pg from 'pg';
import { leftOut } from './contents.ts';

/**
 * The tables of the shop, each after those it refers to, so that they can be filled in this order by any owner.
 * @throws when tables refer to each other in a circle
 */
export async function tablesInOrder(client: pg.Client): Promise<string[]> {
  const { rows: tables } = await client.query<{ name: string }>(
    `SELECT relname AS name FROM pg_class WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace ORDER BY relname`,
  );
  const { rows: references } = await client.query<{ from: string; to: string }>(
    `SELECT f.relname AS from, t.relname AS to FROM pg_constraint c
     JOIN pg_class f ON f.oid = c.conrelid JOIN pg_class t ON t.oid = c.confrelid
     WHERE c.contype = 'f' AND f.oid <> t.oid AND f.relnamespace = 'public'::regnamespace`,
  );
  const waiting = new Set(tables.map(({ name }) => name).filter((name) => !leftOut.includes(name)));
  const order: string[] = [];
  while (waiting.size > 0) {
    const free = [...waiting].filter((name) => !references.some(({ from, to }) => from === name && waiting.has(to)));
    if (free.length === 0) throw new Error(`Tables refer to each other in a circle: ${[...waiting].join(', ')}`);
    for (const name of free) waiting.delete(name);
    order.push(...free);
  }
  return order;
}

/** Columns that hold data of their own; generated ones are made anew. */
export async function storedColumns(client: pg.Client, table: string): Promise<string[]> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT attname AS name FROM pg_attribute WHERE attrelid = to_regclass($1) AND attnum > 0 AND NOT attisdropped
       AND attgenerated = '' ORDER BY attnum`,
    [`public."${table}"`],
  );
  return rows.map(({ name }) => name);
}

export function copyText(table: string, columns: readonly string[]): string {
  return `"${table}" (${columns.map((name) => `"${name.replaceAll('"', '""')}"`).join(', ')})`;
}

/** Counters behind columns go on after the highest number that was filled in. */
export async function moveSequences(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ sequence: string; table: string; column: string }>(
    `SELECT s.oid::regclass::text AS sequence, t.relname AS table, a.attname AS column FROM pg_class s
     JOIN pg_depend d ON d.objid = s.oid AND d.deptype IN ('a', 'i') JOIN pg_class t ON t.oid = d.refobjid
     JOIN pg_attribute a ON a.attrelid = t.oid AND a.attnum = d.refobjsubid
     WHERE s.relkind = 'S' AND t.relnamespace = 'public'::regnamespace`,
  );
  for (const { sequence, table, column } of rows)
    await client.query(
      `SELECT setval('${sequence}', coalesce((SELECT max("${column}") FROM "${table}"), 0) + 1, false)`,
    );
}
