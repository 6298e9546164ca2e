import type { Tx } from './client.ts';

/**
 * The next number of a kind, such as `LOT-00042`: counted in the transaction, so a rolled-back command leaves no gap.
 *
 * @param width digits, padded with zeros
 */
export async function nextNumber(tx: Tx, kind: string, width: number): Promise<string> {
  const [row] = await tx.$queryRaw<{ next: number }[]>`
    INSERT INTO counters (kind, next) VALUES (${kind}, 1) ON CONFLICT (kind) DO UPDATE SET next = counters.next + 1 RETURNING next`;
  return `${kind}-${String(row?.next ?? 1).padStart(width, '0')}`;
}

/** Many numbers of a kind in a row, in one statement. */
export async function nextNumbers(
  tx: Tx,
  { kind, width, count }: { kind: string; width: number; count: number },
): Promise<string[]> {
  if (count === 0) return [];
  const [row] = await tx.$queryRaw<{ next: number }[]>`
    INSERT INTO counters (kind, next) VALUES (${kind}, ${count})
    ON CONFLICT (kind) DO UPDATE SET next = counters.next + ${count} RETURNING next`;
  const last = row?.next ?? count;
  return Array.from(
    { length: count },
    (_, index) => `${kind}-${String(last - count + 1 + index).padStart(width, '0')}`,
  );
}
