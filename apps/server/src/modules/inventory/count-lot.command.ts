import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { Problem } from '@hubwright/contracts/problems';
import { countTolerance } from '@hubwright/rules/stock';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { refuseCountedByOther } from './bin-count.ts';
import { postDifference } from './count-difference.ts';
import { binExists, lotLocks, onHandAt, theLot } from './lot.ts';
import { binOrQuarantine, type Place } from './place.ts';

type Counting = Context<typeof countOperations.countLot>;
type CountedLot = Awaited<ReturnType<typeof theLot>>;

/**
 * What was counted becomes what is on the book. The version makes sure that nothing moved between counting and entering; a
 * difference beyond the tolerance changes nothing until another person has decided.
 */
export const countLot = defineCommand(countOperations.countLot, {
  locks: async (input, tx) => [...(await lotLocks(tx, input.lotId)), ...(input.bin ? [`bin-count:${input.bin}`] : [])],
  async execute(context) {
    const { tx, input, actor, now, newId } = context;
    const lot = await theLot(tx, input.lotId);
    sameVersion(lot.version, context.expectedVersion);
    const place = binOrQuarantine(input.bin);
    if (input.bin) await binExists(tx, input.bin);
    await refuseCountedByOther(tx, input.bin, actor.personId);
    await refuseWaiting(context, lot, place);
    await refuseWhoDecided(context, lot, place);
    const onBook = await onHandAt(tx, lot.id, place);
    const difference = input.counted - onBook;
    if (difference > 0) await refuseSecondPiece(context, lot);
    const tolerance = countTolerance(onBook, { exact: lot.part.serialised || lot.ownerId !== null });
    const state: 'posted' | 'waiting' = Math.abs(difference) <= tolerance ? 'posted' : 'waiting';
    const counted = { lot, place, difference, reason: input.reason };
    const posted = state === 'posted' ? await postDifference(context, counted) : nothingPosted(lot);
    const id = newId();
    const { movementId, version, freed } = posted;
    await tx.lotCount.create({
      data: {
        ...{ id, lotId: lot.id, placeKind: place.kind, placeRef: place.ref, onBook, counted: input.counted, tolerance },
        ...{ state, reason: input.reason, countedBy: actor.personId, countedAt: now, lotVersion: version, movementId },
      },
    });
    return {
      reply: { id: lot.id, version, countId: id, state, movementId, freed, difference: shown(state, difference) },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: {
        code: lot.code,
        place: input.bin ?? 'quarantine',
        onBook,
        counted: input.counted,
        difference,
        state,
        freed,
      },
      reason: input.reason,
    };
  },
});

/** A count that waits stays blind: whoever counts again must not know how much is thought to be missing. */
function shown(state: 'posted' | 'waiting', difference: number): number | null {
  return state === 'posted' ? difference : null;
}

function nothingPosted({ version }: CountedLot) {
  return { movementId: null, version, freed: [] };
}

async function refuseWaiting({ tx }: Counting, lot: CountedLot, { kind, ref }: Place): Promise<void> {
  const waiting = await tx.lotCount.findFirst({
    where: { lotId: lot.id, placeKind: kind, placeRef: ref, state: 'waiting' },
  });
  if (waiting) throw new Problem('count-waiting', `A count of ${lot.code} there waits`, { count: waiting.id });
}

/** Whoever asked for another count has seen the book's figure: a third eye counts, or whoever counted before. */
async function refuseWhoDecided({ tx, actor }: Counting, lot: CountedLot, { kind, ref }: Place): Promise<void> {
  const before = await tx.lotCount.findFirst({
    where: { lotId: lot.id, placeKind: kind, placeRef: ref },
    orderBy: { countedAt: 'desc' },
    select: { state: true, decidedBy: true },
  });
  if (before?.state === 'recount' && before.decidedBy === actor.personId)
    throw new Problem('second-person-needed', `You asked for another count of ${lot.code} knowing the book’s figure`, {
      lot: lot.code,
    });
}

/** A serialized piece is in one place: found here, it is moved here, not made a second time. */
async function refuseSecondPiece({ tx, input }: Counting, lot: CountedLot): Promise<void> {
  if (!lot.part.serialised) return;
  const known = await tx.balance.findFirst({ where: { lotId: lot.id, onHand: { gt: 0 } } });
  if (known || input.counted > 1)
    throw new Problem(
      'serial-elsewhere',
      `${lot.code} is one piece${known ? ' and is on the book elsewhere' : ''}`,
      {},
      [{ pointer: '/counted', detail: 'There is one piece with this serial' }],
    );
}
