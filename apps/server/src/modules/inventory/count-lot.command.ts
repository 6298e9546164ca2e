import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { Problem } from '@hubwright/contracts/problems';
import { countTolerance } from '@hubwright/rules/stock';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { binExists, lotLocks, onHandAt, theLot } from './lot.ts';
import { moveStock } from './move-stock.ts';
import { binOrQuarantine, count } from './place.ts';
import { freeWhatIsGone } from './reservations.ts';

/**
 * What was counted becomes what is on the book. The version makes sure that nothing moved between counting and entering;
 * a large difference takes a manager.
 */
export const countLot = defineCommand(inventoryOperations.countLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input } = context;
    const lot = await theLot(tx, input.lotId);
    sameVersion(lot.version, context.expectedVersion);
    const place = binOrQuarantine(input.bin);
    if (input.bin) await binExists(tx, input.bin);
    const onBook = await onHandAt(tx, lot.id, place);
    const difference = input.counted - onBook;
    refuseLarge(context, { code: lot.code, onBook, difference });
    const route = difference > 0 ? { from: count, to: place } : { from: place, to: count };
    const moved =
      difference === 0
        ? undefined
        : await moveStock(context, { lot, quantity: Math.abs(difference), ...route, reason: input.reason });
    const freed = difference < 0 ? await freeWhatIsGone(tx, lot.id) : [];
    const version = moved?.version ?? lot.version;
    return {
      reply: { id: lot.id, version, movementId: moved?.movementId ?? null, difference, freed },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { code: lot.code, place: input.bin ?? 'quarantine', onBook, counted: input.counted, difference, freed },
      reason: input.reason,
    };
  },
});

/** Says neither the book's figure nor by how much it differs: what is counted again is counted, not copied. */
function refuseLarge(
  { actor, input }: Pick<Context<typeof inventoryOperations.countLot>, 'actor' | 'input'>,
  found: { code: string; onBook: number; difference: number },
): void {
  const tolerance = countTolerance(found.onBook);
  if (Math.abs(found.difference) <= tolerance || actor.roles.includes('manager')) return;
  throw new Problem(
    'count-needs-manager',
    `${found.code}: ${input.counted} counted; the book differs by more than the parts room may enter`,
    { code: found.code, counted: input.counted },
    [{ pointer: '/counted', detail: 'Count again, without looking at the book' }],
  );
}
