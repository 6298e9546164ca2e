import type { DirectiveItem, DirectiveRecord, DirectiveUnit } from '@hubwright/rules/directives';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { TimeRecord } from '../../platform/database/generated/client.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { recordShape } from './rule-shapes.ts';

/** Both a transaction and the read-only models answer this. */
export type Models = Reads['models'];

/** A unit with its parts, their hours since new, and all that was recorded of directives on them. */
export interface UnitOnRecord extends Omit<DirectiveUnit, 'silentOn'> {
  /** Every blade it has is on record. */
  readonly isWhole: boolean;
  readonly rows: readonly ComplianceRow[];
  readonly records: readonly DirectiveRecord[];
}
type ComplianceRow = Awaited<ReturnType<Models['directiveCompliance']['findMany']>>[number];

/** Several units at once: five statements however many there are. */
export async function unitsOnRecord(models: Models, unitIds: readonly string[]): Promise<Map<string, UnitOnRecord>> {
  const items = await models.serializedItem.findMany({
    where: { id: { in: [...unitIds] } },
    include: { model: { select: { bladeCount: true } } },
  });
  const fitted = await models.installation.findMany({
    where: { parentId: { in: [...unitIds] }, toDate: null },
    orderBy: { position: 'asc' },
    include: { item: true },
  });
  const ids = [...new Set([...unitIds, ...fitted.map(({ itemId }) => itemId)])];
  const times = await models.timeRecord.findMany({
    where: { itemId: { in: ids } },
    orderBy: [{ recordedOn: 'asc' }, { recordedAt: 'asc' }],
  });
  const timesOf = grouped(times);
  const rowsOf = grouped(await compliancesOf(models, ids));
  return new Map(
    items.map((item) => {
      const parts = fitted.filter(({ parentId }) => parentId === item.id);
      const blades = parts.filter(({ item: part }) => part.kind === 'blade').length;
      const rows = [item.id, ...parts.map(({ itemId }) => itemId)].flatMap((id) => rowsOf.get(id) ?? []).sort(asMade);
      return [
        item.id,
        {
          unit: shape('the unit', item, timesOf.get(item.id)),
          modelId: item.modelId,
          parts: parts.map(({ position, item: part }) => shape(position, part, timesOf.get(part.id))),
          isWhole: parts.length > 0 && blades === (item.model?.bladeCount ?? 0),
          ...{ rows, records: rows.map(recordShape) },
        },
      ];
    }),
  );
}

function grouped<Row extends { itemId: string }>(rows: readonly Row[]): Map<string, Row[]> {
  const by = new Map<string, Row[]>();
  for (const row of rows) {
    const list = by.get(row.itemId);
    if (list) list.push(row);
    else by.set(row.itemId, [row]);
  }
  return by;
}

function shape(
  name: string,
  { id, partNumber, serial }: { id: string; partNumber: string; serial: string | null },
  times: readonly TimeRecord[] = [],
): DirectiveItem {
  return {
    ...{ itemId: id, name, partNumber, serial },
    hoursTenths: times.at(-1)?.sinceNewTenths ?? 'unknown',
    earlier: times.flatMap(({ recordedOn, sinceNewTenths }) =>
      sinceNewTenths === null ? [] : [{ on: fromDbDate(recordedOn), hoursTenths: sinceNewTenths }],
    ),
  };
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
