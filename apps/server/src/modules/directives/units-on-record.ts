import type { DirectiveItem, DirectiveRecord, DirectiveUnit } from '@hubwright/rules/directives';
import { grouped } from '../../platform/database/grouped.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { partsWithin, TimesOnRecord } from '../units/public.ts';
import { recordShape } from './rule-shapes.ts';

/** Both a transaction and the read-only models answer this. */
export type Models = Reads['models'];

/** A unit with its parts and theirs, their hours since new as computed for the day, and all that was recorded of directives on them. */
export interface UnitOnRecord extends Omit<DirectiveUnit, 'silentOn'> {
  /** Every blade it has is on record. */
  readonly isWhole: boolean;
  readonly rows: readonly ComplianceRow[];
  readonly records: readonly DirectiveRecord[];
  /** To ask for the hours of another day. */
  readonly times: TimesOnRecord;
}
type ComplianceRow = Awaited<ReturnType<Models['directiveCompliance']['findMany']>>[number];

/** Several units at once, in so many statements however many there are. */
export async function unitsOnRecord(
  models: Models,
  { unitIds, asOf }: { unitIds: readonly string[]; asOf: string },
): Promise<Map<string, UnitOnRecord>> {
  const items = await models.serializedItem.findMany({
    where: { id: { in: [...unitIds] } },
    include: { model: { select: { bladeCount: true } } },
  });
  const fitted = grouped(await partsWithin(models, unitIds), ({ unitId }) => unitId);
  const ids = [...new Set([...unitIds, ...[...fitted.values()].flat().map(({ itemId }) => itemId)])];
  const times = await TimesOnRecord.of(models, ids);
  const rowsOf = grouped(await compliancesOf(models, ids), ({ itemId }) => itemId);
  return new Map(
    items.map((item) => {
      const parts = fitted.get(item.id) ?? [];
      const blades = parts.filter(({ item: part }) => part.kind === 'blade').length;
      const rows = [item.id, ...parts.map(({ itemId }) => itemId)].flatMap((id) => rowsOf.get(id) ?? []).sort(asMade);
      return [
        item.id,
        {
          times,
          unit: shape('the unit', item, { times, asOf }),
          modelId: item.modelId,
          parts: parts.map(({ position, item: part }) => shape(position, part, { times, asOf })),
          isWhole: parts.length > 0 && blades === (item.model?.bladeCount ?? 0),
          ...{ rows, records: rows.map(recordShape) },
        },
      ];
    }),
  );
}

function shape(
  name: string,
  { id, partNumber, serial }: { id: string; partNumber: string; serial: string | null },
  { times, asOf }: { times: TimesOnRecord; asOf: string },
): DirectiveItem {
  const { tenths, atLeastTenths } = times.on(id, asOf).sinceNew;
  return {
    ...{ itemId: id, name, partNumber, serial, hoursTenths: tenths, atLeastTenths },
    earlier: hoursOn(times, id, [...times.paperDays(id).filter((day) => day < asOf), asOf]),
  };
}

/** Hours since new on the days on which they are known, the oldest first. */
export function hoursOn(
  times: TimesOnRecord,
  itemId: string,
  days: readonly string[],
): { on: string; hoursTenths: number }[] {
  return [...new Set(days)].sort().flatMap((on) => {
    const { tenths } = times.on(itemId, on).sinceNew;
    return tenths === 'unknown' ? [] : [{ on, hoursTenths: tenths }];
  });
}

function asMade(a: ComplianceRow, b: ComplianceRow): number {
  return a.recordedAt.getTime() - b.recordedAt.getTime() || (a.id < b.id ? -1 : 1);
}

/** Those made before a serial turned out to be on record already go with the item. */
async function compliancesOf(models: Models, ids: readonly string[]): Promise<ComplianceRow[]> {
  const joined = await models.serializedItem.findMany({
    where: { joinedIntoId: { in: [...ids] } },
    select: { id: true, joinedIntoId: true },
  });
  const into = new Map(joined.map(({ id, joinedIntoId }) => [id, joinedIntoId ?? id]));
  const rows = await models.directiveCompliance.findMany({ where: { itemId: { in: [...ids, ...into.keys()] } } });
  return rows.map((row) => ({ ...row, itemId: into.get(row.itemId) ?? row.itemId }));
}

/** Those of some part numbers that are followed by serial anywhere. */
export async function followedNumbers(models: Models, numbers: readonly string[]): Promise<Set<string>> {
  const rows = await models.serializedItem.findMany({
    where: { partNumber: { in: [...new Set(numbers)] } },
    select: { partNumber: true },
    distinct: ['partNumber'],
  });
  return new Set(rows.map(({ partNumber }) => partNumber));
}

/**
 * Part numbers of which the record cannot tell whether one is fitted: nowhere followed by serial, or, where parts of this unit are not
 * on record, any that is not seen in it.
 */
export function silentOn(
  { parts, isWhole }: Pick<UnitOnRecord, 'parts' | 'isWhole'>,
  numbers: readonly string[],
  followed: ReadonlySet<string>,
): string[] {
  const seen = new Set(parts.map(({ partNumber }) => partNumber.toUpperCase()));
  const asked = [...new Set(numbers)].filter((number) => !seen.has(number.toUpperCase()));
  return isWhole ? asked.filter((number) => !followed.has(number)) : asked;
}
