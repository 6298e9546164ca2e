import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { postDifference } from './count-difference.ts';
import { lotLocks, theLot } from './lot.ts';
import type { PlaceKind } from './place.ts';

type Deciding = Context<typeof countOperations.decideCount>;

/** A second person looks at a large difference: it is written, left, or counted again. */
export const decideCount = defineCommand(countOperations.decideCount, {
  async locks(input, tx) {
    const count = await tx.lotCount.findUnique({ where: { id: input.countId }, select: { lotId: true } });
    return count ? lotLocks(tx, count.lotId) : [];
  },
  async execute(context) {
    const { tx, input, actor, now } = context;
    const count = await theCount(context);
    const lot = await theLot(tx, count.lotId);
    const place = { kind: count.placeKind as PlaceKind, ref: count.placeRef };
    const difference = count.counted - count.onBook;
    const approved = input.verdict === 'approved';
    if (approved && lot.version !== count.lotVersion)
      throw new Problem('moved-since-count', `${lot.code} changed since it was counted`, { lot: lot.code });
    const { movementId, version, freed } = approved
      ? await postDifference(context, { lot, place, difference, reason: count.reason })
      : { movementId: null, version: lot.version, freed: [] };
    await tx.lotCount.update({
      where: { id: count.id },
      data: { state: input.verdict, decidedBy: actor.personId, decidedAt: now, note: input.note, movementId },
    });
    return {
      reply: { id: lot.id, version, movementId, freed },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { code: lot.code, count: count.id, verdict: input.verdict, difference, freed },
      ...(input.note ? { reason: input.note } : {}),
    };
  },
});

async function theCount({ tx, input, actor }: Deciding) {
  const count = found(await tx.lotCount.findUnique({ where: { id: input.countId } }), 'This count');
  if (count.state !== 'waiting')
    throw new Problem('count-decided', `This count was decided before: ${count.state}`, { state: count.state });
  if (count.countedBy === actor.personId)
    throw new Problem('second-person-needed', 'You counted this yourself: somebody else decides', { count: count.id });
  return count;
}
