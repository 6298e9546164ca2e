import { type EquipmentKind, isTestSystem } from '@hubwright/contracts/manuals/words';
import type { ProblemType } from '@hubwright/contracts/problems';
import type { EquipmentCheck } from '@hubwright/contracts/processes/equipment-operations';
import { type Standing, standingsOf } from '@hubwright/rules/fitness';

/** The newest result of a quantity at or before a moment. */
export interface NewestReading {
  readonly equipmentId: string;
  readonly quantity: string;
  readonly value: string;
  readonly good: boolean;
  readonly takenAt: Date;
  readonly day: string;
}

/** $1 equipment ids, $2 the moment. One row for each quantity that was ever read before it. */
export const newestReadingsSql = `
  SELECT DISTINCT ON (r.equipment_id, r.quantity) r.equipment_id::text AS "equipmentId", r.quantity, r.value, r.good, r.taken_at AS "takenAt",
    (r.taken_at AT TIME ZONE coalesce((SELECT zone FROM shop_profile), 'UTC'))::date::text AS day
  FROM equipment_readings r WHERE r.equipment_id = ANY ($1::uuid[]) AND r.taken_at <= $2::timestamptz
  ORDER BY r.equipment_id, r.quantity, r.taken_at DESC, r.id DESC`;

export interface Moment {
  readonly at: Date;
  /** The same in the shop's calendar. */
  readonly day: string;
}

interface Stored {
  readonly id: string;
  readonly code: string;
  readonly kind: string;
  readonly checks: unknown;
}

export type Stood = Standing & { readonly value: string | undefined };

export const checksOf = ({ checks }: { checks: unknown }) => checks as readonly EquipmentCheck[];

/** How each check of one tank or system stands at a moment, given the newest readings before it. */
export function standingAt(equipment: Stored, newest: readonly NewestReading[], { at, day }: Moment): Stood[] {
  const own = newest.filter(({ equipmentId }) => equipmentId === equipment.id);
  const readings = own.map((one) => ({ ...one, name: one.quantity, at: one.takenAt.getTime() }));
  return standingsOf(checksOf(equipment), readings, { at: at.getTime(), day }).map((standing) => ({
    ...standing,
    value: own.find(({ quantity }) => quantity === standing.name)?.value,
  }));
}

export interface Shut {
  readonly problem: ProblemType;
  readonly detail: string;
}

/** Why nothing can be signed with it at that moment: what was read bad first, then what was not read in time. */
export function shutBy({ code, kind }: Stored, standings: readonly Stood[]): Shut | undefined {
  const isSystem = isTestSystem(kind as EquipmentKind);
  const out = standings.filter(({ state }) => state === 'out');
  const late = standings.filter(({ state }) => state === 'missing' || state === 'overdue');
  if (out.length > 0) {
    const said = out.map(({ name, value }) => `${name} ${value}`).join(', ');
    return isSystem
      ? { problem: 'system-check-failed', detail: `${code}: the check failed on ${said}` }
      : { problem: 'tank-out-of-limits', detail: `${code} is out of its limits: ${said}` };
  }
  if (late.length === 0) return undefined;
  const names = late.map(({ name }) => name).join(', ');
  return isSystem
    ? { problem: 'system-check-missing', detail: `${code}: not checked for the day: ${names}` }
    : { problem: 'tank-overdue', detail: `${code}: the analysis is overdue: ${names}` };
}
