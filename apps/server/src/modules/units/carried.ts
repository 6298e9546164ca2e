import type { Operation } from '@hubwright/contracts/operation';
import type { CarriedKind } from '@hubwright/contracts/units/carried';
import type { Context } from '../../platform/command/command.ts';
import type { Reads } from '../../platform/database/reads.ts';

/** What parts carry from visit to visit, by item: the newest of each kind and place. */
export type CarriedOf = ReadonlyMap<string, readonly CarriedNow[]>;

export interface CarriedNow {
  readonly kind: string;
  readonly place: string;
  readonly value: string;
  readonly basis: string;
  readonly workOrderId: string | null;
  readonly recordedAt: Date;
}

export async function carriedBy(
  tx: Pick<Reads['models'], 'carriedFact'>,
  itemIds: readonly string[],
): Promise<CarriedOf> {
  const rows = await tx.carriedFact.findMany({
    where: { itemId: { in: [...itemIds] } },
    orderBy: [{ recordedAt: 'desc' }, { id: 'desc' }],
    distinct: ['itemId', 'kind', 'place'],
  });
  return new Map(itemIds.map((id) => [id, rows.filter(({ itemId }) => itemId === id)]));
}

/** The value of a kind that a part has one of. */
export function carriedValue(facts: readonly CarriedNow[] | undefined, kind: CarriedKind): string | null {
  return facts?.find((fact) => fact.kind === kind)?.value ?? null;
}

/** Adds to what a part carries; nothing is overwritten. */
export async function writeCarried(
  { tx, now, actor, entryId, newId }: Pick<Context<Operation>, 'tx' | 'now' | 'actor' | 'entryId' | 'newId'>,
  fact: { itemId: string; kind: CarriedKind; place: string; value: string; basis: string; workOrderId: string | null },
): Promise<string> {
  const id = newId();
  await tx.carriedFact.create({ data: { ...fact, id, recordedBy: actor.personId, recordedAt: now, entryId } });
  return id;
}
