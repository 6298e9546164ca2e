import type { KitContext } from './kit.ts';

export interface Promised {
  readonly lineId: string;
  readonly lotId: string;
  readonly quantity: number;
}

/** Writes many promises in one statement; what is promised to a line of the same lot already grows. Call under the parts' locks. */
export async function promiseMany({ tx, newId, now }: KitContext, picks: readonly Promised[]): Promise<void> {
  const sums = new Map<string, Promised>();
  for (const pick of picks) {
    const key = `${pick.lineId} ${pick.lotId}`;
    sums.set(key, { ...pick, quantity: pick.quantity + (sums.get(key)?.quantity ?? 0) });
  }
  const rows = [...sums.values()].map((pick) => ({ id: newId(), ...pick }));
  await tx.$executeRaw`
    INSERT INTO reservations AS r (id, kit_line_id, lot_id, quantity, created_at)
    SELECT id, "lineId", "lotId", quantity, ${now}
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS p(id uuid, "lineId" uuid, "lotId" uuid, quantity int)
    ON CONFLICT (kit_line_id, lot_id) DO UPDATE SET quantity = r.quantity + excluded.quantity`;
}
