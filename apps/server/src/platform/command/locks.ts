import { createHash } from 'node:crypto';
import type { Tx } from '../database/client.ts';

/** A stable 64-bit key for a lock's name. A collision only makes two commands wait for each other. */
export function lockKey(name: string): bigint {
  return createHash('sha256').update(name).digest().readBigInt64BE(0);
}

/** Takes all locks of a command in ascending key order, which no two commands can do in opposite orders. */
export async function takeLocks(tx: Tx, names: readonly string[]): Promise<void> {
  if (names.length === 0) return;
  const keys = [...new Set(names.map(lockKey))].sort((a, b) => (a < b ? -1 : 1)).map(String);
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(key) FROM unnest(${keys}::bigint[]) WITH ORDINALITY AS wanted(key, place) ORDER BY place`;
}
