import type pg from 'pg';
import { withheldHash } from '../command/personal.ts';
import { eachRow } from '../database/each-row.ts';
import type { Fault } from './source.ts';

/** What lies beside the chain must be what the chain holds the hash of. What was erased is gone, and no fault. */
export async function checkPersonal(client: pg.Client): Promise<Fault[]> {
  const faults: Fault[] = [];
  const rows = eachRow<{ entry: string; field: string; salt: string; value: unknown; body: string | null }>(
    client,
    `SELECT p.entry_id AS entry, p.field, p.salt, p.value, e.body FROM personal_values p
     LEFT JOIN record_entries e ON e.id = p.entry_id ORDER BY p.entry_id, p.field`,
  );
  for await (const { entry, field, salt, value, body } of rows) {
    const { input } = JSON.parse(body ?? '{}') as { input?: Record<string, { withheld?: string }> };
    if (input?.[field]?.withheld !== withheldHash(salt, value))
      faults.push({ place: `entry ${entry}, ${field}`, reason: 'the value kept beside the entry was changed' });
  }
  return faults;
}
