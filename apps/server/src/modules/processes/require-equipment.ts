import type { EquipmentKind } from '@hubwright/contracts/manuals/words';
import { Problem } from '@hubwright/contracts/problems';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';
import {
  checksOf,
  type Moment,
  type NewestReading,
  newestReadingsSql,
  type Shut,
  shutBy,
  standingAt,
} from './equipment-fitness.ts';

/** A tank or test system as a signature names it, with the results it was fit by. */
export interface EquipmentUsed {
  readonly id: string;
  readonly code: string;
  readonly title: string;
  readonly fitBy: readonly {
    readonly name: string;
    readonly value: string;
    readonly unit: string;
    readonly takenAt: string;
  }[];
}

/** What signs with one waits for a reading of it being recorded, and the other way round: none slips through between the two. */
export function equipmentLocks(equipmentId: string | null | undefined): string[] {
  return equipmentId ? [`equipment:${equipmentId}`] : [];
}

/**
 * The tank or system a step was done in or with, fit at the moment of the work; undefined where the step asks for none. Throws
 * `equipment-missing`, `equipment-wrong`, or why it is shut.
 */
export async function requireEquipment(
  tx: Tx,
  asked: { kind: string | null; equipmentId: string | undefined },
  moment: Moment,
): Promise<EquipmentUsed | undefined> {
  const { kind, equipmentId } = asked;
  if (kind === null) {
    if (equipmentId === undefined) return undefined;
    throw new Problem('equipment-wrong', 'This step names no tank or test system');
  }
  const what = kind.replaceAll('-', ' ');
  if (equipmentId === undefined)
    throw new Problem('equipment-missing', `This step needs a ${what}`, { kind }, [
      { pointer: '/equipmentId', detail: `Choose the ${what} that was used` },
    ]);
  const equipment = found(await tx.equipment.findUnique({ where: { id: equipmentId } }), 'This equipment');
  const { id, code, title, inService } = equipment;
  if (!inService || equipment.kind !== kind) {
    const why = inService ? `is a ${equipment.kind.replaceAll('-', ' ')}; this needs a ${what}` : 'is out of service';
    throw new Problem('equipment-wrong', `${code} ${why}`, { equipment: code, kind });
  }
  const newest = await tx.$queryRawUnsafe<NewestReading[]>(newestReadingsSql, [id], moment.at);
  const standings = standingAt(equipment, newest, moment);
  const shut = shutBy(equipment, standings);
  if (shut) throw new Problem(shut.problem, shut.detail, { equipment: code });
  const units = new Map(checksOf(equipment).map(({ name, unit }) => [name, unit]));
  const fitBy = standings.map(({ name, value = '', reading }) => ({
    ...{ name, value, unit: units.get(name) ?? '', takenAt: new Date(reading?.at ?? 0).toISOString() },
  }));
  return { id, code, title, fitBy };
}

/** Why nothing is signed with these now, by id; what is fit is left out. */
export async function equipmentShut(
  reads: Reads,
  ids: readonly string[],
  moment: Moment,
): Promise<Map<string, string>> {
  const all = await reads.models.equipment.findMany({ where: { id: { in: [...ids] } } });
  const newest = await reads.sql<NewestReading>(newestReadingsSql, [ids, moment.at]);
  return new Map(
    all.flatMap((one) => {
      const shut = shutBy(one, standingAt(one, newest, moment));
      return shut ? [[one.id, shut.detail] as const] : [];
    }),
  );
}

/** Kinds of which nothing in service is fit now, and why: no step that asks for one of them can be begun. */
export async function kindsShut(reads: Reads, moment: Moment): Promise<(kind: string) => Shut | undefined> {
  const all = await reads.models.equipment.findMany({
    where: { inService: true },
    orderBy: { code: 'asc' },
    take: 500,
  });
  const ids = all.map(({ id }) => id);
  const newest = await reads.sql<NewestReading>(newestReadingsSql, [ids, moment.at]);
  const judged = all.map((one) => ({ kind: one.kind, shut: shutBy(one, standingAt(one, newest, moment)) }));
  return (kind) => {
    const ofKind = judged.filter((one) => one.kind === kind);
    if (ofKind.some(({ shut }) => shut === undefined)) return undefined;
    const [first] = ofKind.flatMap(({ shut }) => shut ?? []);
    const none = `No ${(kind as EquipmentKind).replaceAll('-', ' ')} is in service`;
    return {
      problem: first?.problem ?? 'equipment-wrong',
      detail: ofKind.map(({ shut }) => shut?.detail).join('; ') || none,
    };
  };
}
