import type { WorkerDatabase } from '../../platform/database/answer-from-database.ts';
import { recompute } from './kept-row.ts';

/** Whoever reads and writes kept due dates holds this. */
export const dueLock = 'unit-due';
/** Units of one transaction of a whole run: what is in memory at a time, and how long others wait for it. */
export const batch = 100;

const nextSql = `
  SELECT id::text FROM serialized_items WHERE kind = 'assembly' AND ($1::uuid IS NULL OR id > $1) ORDER BY id LIMIT ${batch}`;

/** Some batches of a whole run: units after the one named, as of a day. */
export interface DueSlice {
  readonly after: string | null;
  readonly batches: number;
  readonly asOf: string;
  readonly now: string;
}

export interface SliceDone {
  readonly units: number;
  /** Where the next slice begins; null where there is none. */
  readonly last: string | null;
}

/** Works a slice out and keeps it, each batch in a transaction of its own. */
export async function dueSlice({ kept, reads }: WorkerDatabase, slice: DueSlice): Promise<SliceDone> {
  const { batches, asOf } = slice;
  const asked = { asOf, now: new Date(slice.now), models: reads.models };
  let last: string | null = slice.after;
  let units = 0;
  for (let n = 0; n < batches; n += 1) {
    const ids: string[] = await kept.transaction(dueLock, async (ask) => {
      const next = (await ask<{ id: string }>(nextSql, [last])).map(({ id }) => id);
      await recompute(ask, next, asked);
      return next;
    });
    units += ids.length;
    last = ids.at(-1) ?? null;
    if (ids.length < batch) return { units, last: null };
  }
  return { units, last };
}
