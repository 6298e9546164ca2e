import type { DirectiveItem, DirectiveRecord, DirectiveUnit } from '@hubwright/rules/directives';
import { found } from '../../platform/command/version.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { recordShape } from './rule-shapes.ts';

/** Both a transaction and the read-only models answer this. */
export type Models = Reads['models'];

/** The unit, its parts, their hours since new, and all that was recorded of directives on them. */
export async function unitOnRecord(models: Models, unitId: string) {
  const item = found(
    await models.serializedItem.findUnique({ where: { id: unitId }, include: { model: true } }),
    'This unit',
  );
  const fitted = await models.installation.findMany({
    where: { parentId: unitId, toDate: null },
    orderBy: { position: 'asc' },
    include: { item: true },
  });
  const ids = [unitId, ...fitted.map(({ itemId }) => itemId)];
  const times = await models.timeRecord.findMany({
    where: { itemId: { in: ids } },
    orderBy: [{ recordedOn: 'desc' }, { recordedAt: 'desc' }],
    distinct: ['itemId'],
  });
  const hoursOf = (id: string) => times.find(({ itemId }) => itemId === id)?.sinceNewTenths ?? 'unknown';
  const shape = (
    name: string,
    { id, partNumber, serial }: typeof item | (typeof fitted)[number]['item'],
  ): DirectiveItem => ({
    ...{ itemId: id, name, partNumber, serial },
    hoursTenths: hoursOf(id),
  });
  const blades = fitted.filter(({ item: part }) => part.kind === 'blade').length;
  return {
    unit: shape('the unit', item),
    modelId: item.modelId,
    parts: fitted.map(({ position, item: part }) => shape(position, part)),
    isWhole: fitted.length > 0 && blades === (item.model?.bladeCount ?? 0),
    ...(await recordsOf(models, ids)),
  };
}

/** Records in the order they were made; those made before a serial turned out to be on record already go with the item. */
async function recordsOf(models: Models, ids: readonly string[]) {
  const joined = await models.serializedItem.findMany({
    where: { joinedIntoId: { in: [...ids] } },
    select: { id: true, joinedIntoId: true },
  });
  const into = new Map(joined.map(({ id, joinedIntoId }) => [id, joinedIntoId ?? id]));
  const found = await models.directiveCompliance.findMany({
    where: { itemId: { in: [...ids, ...into.keys()] } },
    orderBy: [{ recordedAt: 'asc' }, { id: 'asc' }],
  });
  const rows = found.map((row) => ({ ...row, itemId: into.get(row.itemId) ?? row.itemId }));
  const records: DirectiveRecord[] = rows.map(recordShape);
  return { rows, records };
}

/**
 * Part numbers of which the record cannot tell whether one is fitted: nowhere followed by serial, or, where parts of this unit are not
 * on record, any that is not seen in it.
 */
export async function silentOn(
  models: Models,
  { parts, isWhole }: { parts: DirectiveUnit['parts']; isWhole: boolean },
  numbers: readonly string[],
): Promise<string[]> {
  const seen = new Set(parts.map(({ partNumber }) => partNumber.toUpperCase()));
  const asked = [...new Set(numbers)].filter((number) => !seen.has(number.toUpperCase()));
  if (!isWhole || asked.length === 0) return asked;
  const followed = await models.serializedItem.findMany({
    where: { partNumber: { in: asked } },
    select: { partNumber: true },
    distinct: ['partNumber'],
  });
  return asked.filter((number) => !followed.some(({ partNumber }) => partNumber === number));
}
