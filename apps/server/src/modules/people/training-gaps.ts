import type { Process } from '@hubwright/contracts/people/operations';
import { type TrainingLine, trainingOn } from '@hubwright/rules/training';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate, fromDbDateOrNull, toDbDate } from '../../platform/database/dates.ts';

/** What reading who may do what needs; a transaction and the reading client both have it. */
export interface AuthorisationReads {
  readonly authorisation: Pick<Tx['authorisation'], 'findMany'>;
  readonly trainingItem: Pick<Tx['trainingItem'], 'findMany'>;
  readonly trainingRecord: Pick<Tx['trainingRecord'], 'findMany'>;
  readonly inspectionList: Pick<Tx['inspectionList'], 'findUnique' | 'findMany'>;
}

/** A training an authorisation lacks. `ranOutOn` is the last day on which it counted; null: never passed. */
export interface MissingTraining {
  readonly itemId: string;
  readonly title: string;
  readonly ranOutOn: string | null;
}

/**
 * What each of these people lacks on a day for performing, inspecting or approving a process; nobody is in it who lacks nothing.
 * Reads the log only where the shop asks for training.
 */
export async function trainingGaps(
  reads: AuthorisationReads,
  need: { process: Process; day: string },
  personIds: readonly string[],
): Promise<Map<string, MissingTraining[]>> {
  const items = await reads.trainingItem.findMany({ where: { active: true, processes: { has: need.process } } });
  if (items.length === 0 || personIds.length === 0) return new Map();
  const lines = await linesOf(reads, { personIds, itemIds: items.map(({ id }) => id), day: need.day });
  const gapsOf = (personId: string) =>
    items.flatMap(({ id, title }) => {
      const { current, until } = trainingOn(lines.get(`${personId} ${id}`) ?? [], need.day);
      return current ? [] : [{ itemId: id, title, ranOutOn: until }];
    });
  return new Map(personIds.map((id) => [id, gapsOf(id)] as const).filter(([, gaps]) => gaps.length > 0));
}

/** Standing lines of the log by `person item`. */
export async function linesOf(
  reads: Pick<AuthorisationReads, 'trainingRecord'>,
  of: { personIds: readonly string[]; itemIds: readonly string[]; day: string },
): Promise<Map<string, TrainingLine[]>> {
  const rows = await reads.trainingRecord.findMany({
    where: {
      personId: { in: [...new Set(of.personIds)] },
      itemId: { in: [...of.itemIds] },
      heldOn: { lte: toDbDate(of.day) },
      supersededBy: null,
    },
    select: { personId: true, itemId: true, heldOn: true, result: true, dueOn: true },
  });
  const lines = new Map<string, TrainingLine[]>();
  for (const { personId, itemId, ...row } of rows) {
    const line = {
      heldOn: fromDbDate(row.heldOn),
      result: row.result as TrainingLine['result'],
      dueOn: fromDbDateOrNull(row.dueOn),
    };
    lines.set(`${personId} ${itemId}`, [...(lines.get(`${personId} ${itemId}`) ?? []), line]);
  }
  return lines;
}

/** “Eye examination (ran out on 2026-03-01)”. */
export function gapsInWords(gaps: readonly MissingTraining[]): string {
  return gaps
    .map(({ title, ranOutOn }) => `“${title}” (${ranOutOn === null ? 'never passed' : `counted until ${ranOutOn}`})`)
    .join(', ');
}
