import { kitListLine } from '@hubwright/contracts/manuals/revision';
import type { Operation } from '@hubwright/contracts/operation';
import type { z } from 'zod';
import type { Context, Subject } from '../../platform/command/command.ts';
import type { Reads } from '../../platform/database/reads.ts';

/** A line of a kit list as a revision takes it. */
export type DraftLine = z.output<typeof kitListLine>;
interface ModelOfManual {
  readonly id: string;
  readonly manualId: string;
}

/** Lines as they are kept, with fields in one order, scopes sorted and none empty: two that say the same are the same text. */
export function asDraftLine(row: {
  part: { number: string };
  position: string;
  scopes: string[];
  per: string;
  quantity: number;
  minimum: number | null;
  source: string;
  serialFrom: string | null;
  serialTo: string | null;
}): DraftLine {
  return {
    part: row.part.number,
    position: row.position,
    scopes: [...row.scopes].sort() as DraftLine['scopes'],
    per: row.per as DraftLine['per'],
    quantity: row.quantity,
    ...(row.minimum === null ? {} : { minimum: row.minimum }),
    source: row.source as DraftLine['source'],
    ...(row.serialFrom === null ? {} : { serialFrom: row.serialFrom }),
    ...(row.serialTo === null ? {} : { serialTo: row.serialTo }),
  };
}

const withPart = { part: { select: { number: true } } } as const;

/** What the current revision of its manual says of each model. */
export async function currentKitLists(
  models: Pick<Reads['models'], 'kitListLine'>,
  modelIds: readonly string[],
): Promise<ReadonlyMap<string, DraftLine[]>> {
  const rows = await models.kitListLine.findMany({
    where: { modelId: { in: [...modelIds] }, revision: { state: 'current' } },
    orderBy: { sequence: 'asc' },
    include: withPart,
  });
  const lists = new Map<string, DraftLine[]>();
  for (const row of rows) lists.set(row.modelId, [...(lists.get(row.modelId) ?? []), asDraftLine(row)]);
  return lists;
}

/** Of each model the list that waits to be issued, else the one that holds. */
export async function kitListsNow(
  models: Pick<Reads['models'], 'kitListLine' | 'kitListDraft'>,
  of: readonly ModelOfManual[],
): Promise<ReadonlyMap<string, readonly DraftLine[]>> {
  const ids = of.map(({ id }) => id);
  const [lists, drafts] = await Promise.all([
    currentKitLists(models, ids),
    models.kitListDraft.findMany({ where: { modelId: { in: ids }, state: 'waiting' } }),
  ]);
  return new Map([
    ...lists,
    ...drafts.map(({ modelId, lines }) => [modelId, kitListLine.array().parse(lines)] as const),
  ]);
}

interface DraftToWrite {
  readonly modelId: string;
  readonly manualId: string;
  readonly lines: readonly DraftLine[];
}

/** Each takes the place of the one that waited for its model. */
export async function writeKitListDrafts(
  { tx, now, newId, actor }: Pick<Context<Operation>, 'tx' | 'now' | 'newId' | 'actor'>,
  drafts: readonly DraftToWrite[],
): Promise<readonly Subject[]> {
  await tx.kitListDraft.updateMany({
    where: { modelId: { in: drafts.map(({ modelId }) => modelId) }, state: 'waiting' },
    data: { state: 'dropped', version: { increment: 1 } },
  });
  const rows = drafts.map((draft) => ({ ...draft, id: newId() }));
  await tx.kitListDraft.createMany({
    data: rows.map(({ id, modelId, manualId, lines }) => ({
      ...{ id, modelId, manualId, lines: lines as object[] },
      ...{ preparedBy: actor.personId, preparedAt: now },
    })),
  });
  return rows.map(({ id }) => ({ kind: 'kit-list-draft', id, after: 1 }));
}
