import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import { latestUse, refuseAhead, storageRestated, writeStorage, writeUse } from './keeping.ts';

interface Arrived {
  readonly number: string;
  readonly on: string;
  readonly aircraftId: string | null;
  readonly use: string | null;
  readonly madeOn: string | null;
}

/**
 * What arriving says of how a unit is used and kept. What the desk is told goes on record; where it is told nothing and the unit comes off
 * another aircraft than before, the use is not known any more. A unit that comes in lies in storage no longer.
 */
export async function keepOnArrival(
  context: Pick<Context<Operation>, 'tx' | 'now' | 'today' | 'actor' | 'newId'>,
  itemId: string,
  { number, on, aircraftId, use, madeOn }: Arrived,
): Promise<void> {
  const { tx, today } = context;
  const basis = `said when it came in on ${number}`;
  if (madeOn !== null) refuseAhead(madeOn, today, '/madeOn');
  const known = await latestUse(tx, itemId);
  if (use !== null) await writeUse(context, { itemId, use, madeOn, basis });
  else if (known?.useCategory && (await lastAircraft(context, itemId)) !== aircraftId)
    await writeUse(context, { itemId, use: null, madeOn, basis: `came in on ${number} from another aircraft` });
  else if (madeOn !== null) await writeUse(context, { itemId, use: known?.useCategory ?? null, madeOn, basis });
  const stored = await tx.storagePeriod.findFirst({
    where: { itemId, supersededBy: null, withdrawn: false, toDate: null },
  });
  if (!stored) return;
  const stated = storageRestated(stored);
  const to = on < stated.from ? stated.from : on;
  await writeStorage(context, { ...stated, to }, { basis: `came in on ${number}`, supersedes: stored });
}

async function lastAircraft({ tx }: Pick<Context<Operation>, 'tx'>, unitId: string): Promise<string | null> {
  const last = await tx.workOrder.findFirst({
    where: { unitId },
    orderBy: [{ receivedOn: 'desc' }, { number: 'desc' }],
    select: { aircraftId: true },
  });
  return last?.aircraftId ?? null;
}
