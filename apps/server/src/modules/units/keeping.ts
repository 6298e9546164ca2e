import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { storageCount } from '@hubwright/rules/due';
import { RuleError } from '@hubwright/rules/errors';
import type { Context } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate, fromDbDateOrNull, toDbDate } from '../../platform/database/dates.ts';
import type { StoragePeriod } from '../../platform/database/generated/client.ts';
import type { Reads } from '../../platform/database/reads.ts';

type Writing = Pick<Context<Operation>, 'tx' | 'now' | 'today' | 'actor' | 'newId'>;

/** How a unit is used and when it was made, as somebody said it last. */
export function latestUse(tx: Pick<Reads['models'], 'unitUse'>, itemId: string) {
  return tx.unitUse.findFirst({ where: { itemId }, orderBy: [{ recordedAt: 'desc' }, { id: 'desc' }] });
}

/** Adds what somebody says; of a day of making nobody says anew, the one on record stays. */
export async function writeUse(
  { tx, now, actor, newId }: Pick<Writing, 'tx' | 'now' | 'actor' | 'newId'>,
  said: { itemId: string; use: string | null; madeOn: string | null; basis: string },
): Promise<string> {
  const id = newId();
  const before = said.madeOn === null ? await latestUse(tx, said.itemId) : null;
  await tx.unitUse.create({
    data: {
      ...{ id, itemId: said.itemId, useCategory: said.use, basis: said.basis },
      madeOn: said.madeOn === null ? (before?.madeOn ?? null) : toDbDate(said.madeOn),
      ...{ recordedBy: actor.personId, recordedAt: now },
    },
  });
  return id;
}

/** A unit by its id; a part goes with the unit it sits in. */
export async function unitNamed(tx: Tx, itemId: string) {
  const item = found(await tx.serializedItem.findUnique({ where: { id: itemId } }), 'This unit');
  if (item.kind === 'assembly') return item;
  throw new Problem('invalid-input', 'A part goes with the unit it sits in', {}, [
    { pointer: '/itemId', detail: 'Not a unit of its own' },
  ]);
}

export function refuseAhead(date: string, today: string, pointer: string): void {
  if (date <= today) return;
  throw new Problem('date-ahead', `${date} is still to come`, {}, [{ pointer, detail: `${date} is still to come` }]);
}

/** A time in storage as it stands, for whoever saw it as `supersedesId`. */
export async function standingPeriod(
  tx: Tx,
  { periodId, supersedesId }: { periodId: string; supersedesId: string },
): Promise<StoragePeriod> {
  const row = found(await tx.storagePeriod.findFirst({ where: { periodId, supersededBy: null } }), 'This storage');
  if (row.withdrawn) throw new Problem('storage-superseded', `It was withdrawn: ${row.basis}`);
  if (row.id !== supersedesId) throw new Problem('storage-superseded', 'It was recorded anew after you looked at it');
  return row;
}

/** What a command on a time in storage decides on. */
export async function storageLocks(tx: Tx, periodId: string): Promise<string[]> {
  const row = await tx.storagePeriod.findFirst({ where: { periodId } });
  return row ? [`item:${row.itemId}`] : [];
}

export interface StatedStorage {
  readonly itemId: string;
  readonly preservation: string;
  readonly from: string;
  readonly to: string | null;
  readonly inspectedOn: string | null;
}

/** The row as it stands, as something stated again. */
export function storageRestated(row: StoragePeriod): StatedStorage {
  return {
    ...{ itemId: row.itemId, preservation: row.preservation, from: fromDbDate(row.fromDate) },
    ...{ to: fromDbDateOrNull(row.toDate), inspectedOn: fromDbDateOrNull(row.inspectedOn) },
  };
}

/** Adds a row, which supersedes the one that stood before, and refuses what cannot be: two times in storage at once. */
export async function writeStorage(
  context: Writing,
  stated: StatedStorage,
  how: { basis: string; supersedes?: StoragePeriod; withdrawn?: boolean },
): Promise<{ id: string; periodId: string }> {
  const { tx, now, actor } = context;
  const id = context.newId();
  const periodId = how.supersedes?.periodId ?? id;
  await tx.storagePeriod.create({
    data: {
      ...{ id, periodId, itemId: stated.itemId, preservation: stated.preservation, fromDate: toDbDate(stated.from) },
      toDate: stated.to === null ? null : toDbDate(stated.to),
      inspectedOn: stated.inspectedOn === null ? null : toDbDate(stated.inspectedOn),
      ...{ supersedesId: how.supersedes?.id ?? null, withdrawn: how.withdrawn ?? false, basis: how.basis },
      ...{ recordedBy: actor.personId, recordedAt: now },
    },
  });
  await refuseOverlap(context, stated.itemId);
  return { id, periodId };
}

async function refuseOverlap({ tx, today }: Writing, itemId: string): Promise<void> {
  const rows = await tx.storagePeriod.findMany({ where: { itemId, supersededBy: null, withdrawn: false } });
  try {
    storageCount(rows.map(storageRestated), { rules: [], since: today, asOf: today });
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    const pointer = error.code === 'storage-backwards' ? '/to' : '/from';
    throw new Problem('storage-overlaps', error.message, {}, [{ pointer, detail: error.message }]);
  }
}
