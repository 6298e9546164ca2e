import type { kitsOperations } from '@hubwright/contracts/kits/operations';
import type { Reply } from '@hubwright/contracts/operation';

export type Shortage = Reply<typeof kitsOperations.shortages>['rows'][number];

/** Shortages that touch one kit; without a kit, all. */
export function ofKit(rows: readonly Shortage[], kitCode: string): readonly Shortage[] {
  return kitCode === '' ? rows : rows.filter((row) => row.kits.some((kit) => kit.kitCode === kitCode));
}

/** What can be ordered together: rows of one supplier; rows without one stand last, each to be given a supplier. */
export function bySupplier(rows: readonly Shortage[]): readonly { supplier: Shortage['supplier']; rows: Shortage[] }[] {
  const groups = new Map<string, { supplier: Shortage['supplier']; rows: Shortage[] }>();
  for (const row of rows) {
    const key = row.supplier?.id ?? '';
    const group = groups.get(key) ?? { supplier: row.supplier, rows: [] };
    group.rows.push(row);
    groups.set(key, group);
  }
  return [...groups.values()].sort((one, other) => Number(one.supplier === null) - Number(other.supplier === null));
}
