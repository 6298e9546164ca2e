import { Problem } from '@hubwright/contracts/problems';
import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';

/** The counter of each machine as it was last read: at a check or when a lot began. */
export async function lastHours(
  reads: Pick<Reads, 'sql'>,
  machineIds: readonly string[],
): Promise<Map<string, string>> {
  const rows = await reads.sql<{ machine: string; hours: string }>(hoursSql, [[...machineIds]]);
  return new Map(rows.map(({ machine, hours }) => [machine, hours]));
}

const hoursSql = `
  SELECT m.machine_id::text AS machine, max(r.hours)::text AS hours FROM peening_media m JOIN (
    SELECT media_id, meter_hours::numeric AS hours FROM peening_checks WHERE meter_hours IS NOT NULL
    UNION ALL SELECT media_id, meter_hours::numeric FROM peening_lots WHERE meter_hours IS NOT NULL) r ON r.media_id = m.id
  WHERE m.machine_id = ANY ($1::uuid[]) GROUP BY m.machine_id`;

/** Throws `meter-missing` where hours count and none are given, `meter-back` where the counter showed more before. */
export async function refuseMeter(
  tx: Tx,
  media: { code: string; machineId: string; everyHours: string | null },
  hours: string | undefined,
): Promise<void> {
  const wrong = (type: 'meter-missing' | 'meter-back', detail: string) =>
    new Problem(type, detail, {}, [{ pointer: '/meterHours', detail }]);
  if (hours === undefined) {
    if (media.everyHours !== null)
      throw wrong('meter-missing', `${media.code} is checked every ${media.everyHours} hours`);
    return;
  }
  const [last] = await tx.$queryRawUnsafe<{ hours: string }[]>(hoursSql, [media.machineId]);
  const before = last?.hours;
  if (before !== undefined && Number(hours) < Number(before)) throw wrong('meter-back', `It showed ${before} before`);
}
