import type { SheetSpec } from '@hubwright/contracts/manuals/sheets';
import type { BakeClock } from '@hubwright/contracts/work-orders/bake-shapes';
import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';

/** As the database tells it: instants in its own words. */
export interface StoredBake {
  readonly platedAt: string;
  readonly begun: {
    readonly id: string;
    readonly at: string;
    readonly by: string;
    readonly oven: string;
    readonly lateReason: string | null;
  } | null;
}

/**
 * For a bake step `s`: when the plating before it ended, by the newest signature of the last plating before it on its traveler, and
 * when it went into the oven; null before anything was plated.
 */
export const bakeSql = `CASE WHEN s.sheet->>'kind' = 'bake' THEN (
      SELECT json_build_object('platedAt', so.performed_at, 'begun', (
        SELECT json_build_object('id', b.id, 'at', b.begun_at, 'by', p.display_name, 'oven', b.oven, 'lateReason', b.late_reason)
        FROM oven_bakes b JOIN people p ON p.id = b.begun_by WHERE b.step_id = s.id AND b.stands))
      FROM traveler_steps ps JOIN sign_offs so ON so.step_id = ps.id AND so.result = 'pass' AND so.countersigns_id IS NULL
      WHERE ps.traveler_id = s.traveler_id AND ps.process = 'plating' AND ps.sheet IS NULL AND ps.state = 'signed' AND ps.sequence < s.sequence
      ORDER BY ps.sequence DESC, so.signed_at DESC LIMIT 1) END`;

/** The clocks of a bake; null for what is none, or before anything was plated. */
export function bakeClockOf(
  row: { readonly sheet: unknown; readonly bake: StoredBake | null } | undefined,
): BakeClock | null {
  const spec = row?.sheet as SheetSpec | null | undefined;
  if (!row?.bake || spec?.kind !== 'bake') return null;
  const { platedAt, begun } = row.bake;
  return {
    platedAt: instant(platedAt),
    startWithinMinutes: spec.startWithinMinutes,
    minimumMinutes: spec.minimumMinutes,
    alarmMinutes: spec.alarmMinutes ?? null,
    begun: begun && { ...begun, at: instant(begun.at) },
  };
}

/** Those of every bake of a traveler, by step; also of signed ones, whose signature may have to be corrected. */
export async function bakeClocks(reads: Reads, travelerId: string): Promise<Map<string, BakeClock>> {
  const rows = await reads.sql<{ id: string; sheet: unknown; bake: StoredBake | null }>(
    `SELECT s.id::text, s.sheet, ${bakeSql} AS bake FROM traveler_steps s
     WHERE s.traveler_id = $1::uuid AND s.sheet->>'kind' = 'bake'`,
    [travelerId],
  );
  return new Map(
    rows.flatMap((row) => {
      const clock = bakeClockOf(row);
      return clock ? [[row.id, clock] as const] : [];
    }),
  );
}

/** The same of one step, within the transaction that decides on it. */
export async function bakeClockAt(tx: Tx, stepId: string): Promise<BakeClock | null> {
  const [row] = await tx.$queryRawUnsafe<{ sheet: unknown; bake: StoredBake | null }[]>(
    `SELECT s.sheet, ${bakeSql} AS bake FROM traveler_steps s WHERE s.id = $1::uuid`,
    stepId,
  );
  return bakeClockOf(row);
}

function instant(text: string): string {
  return new Date(text).toISOString();
}
