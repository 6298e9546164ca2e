import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { Problem } from '@hubwright/contracts/problems';
import { inWhatTheyDiffer } from '@hubwright/rules/stock';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { identityOf } from './copy-lot.ts';
import { joinable, refuseGivenUp } from './divided-where.ts';
import { lotLocks, refuseSuspected, theLot } from './lot.ts';
import { moveStock } from './move-stock.ts';

type Merging = Context<typeof handlingOperations.mergeLots>;

/** Two labels for the same thing become one. What of the lot sits in trays or units stays under its old label. */
export const mergeLots = defineCommand(handlingOperations.mergeLots, {
  async locks(input, tx) {
    return [...new Set([...(await lotLocks(tx, input.lotId)), ...(await lotLocks(tx, input.intoId))])];
  },
  async execute(context) {
    const { tx, input } = context;
    const [lot, into] = [await theLot(tx, input.lotId), await theLot(tx, input.intoId)];
    sameVersion(lot.version, context.expectedVersion);
    refuseUnlike(lot, into);
    for (const one of [lot, into]) refuseSuspected(one);
    const here = await joinable(tx, lot);
    if (here.some(({ place }) => place.kind === 'held')) await refuseGivenUp(tx, [lot, into]);
    let versions = { lot: lot.version, into: into.version };
    for (const { place, quantity } of here) {
      const { reason } = input;
      const out = await moveStock(context, {
        lot,
        quantity,
        from: place,
        to: { kind: 'other-lot', ref: into.id },
        reason,
      });
      const back = { lot: into, quantity, from: { kind: 'other-lot', ref: lot.id }, to: place, reason } as const;
      versions = { lot: out.version, into: (await moveStock(context, back)).version };
    }
    await passPromises(context);
    const quantity = here.reduce((sum, each) => sum + each.quantity, 0);
    return {
      reply: { id: lot.id, version: versions.lot, intoVersion: versions.into, quantity },
      subjects: [
        { kind: 'lot', id: lot.id, before: lot.version, after: versions.lot },
        { kind: 'lot', id: into.id, before: into.version, after: versions.into },
      ],
      facts: { code: lot.code, into: into.code, quantity },
      reason: input.reason,
    };
  },
});

function refuseUnlike(lot: Awaited<ReturnType<typeof theLot>>, into: typeof lot): void {
  const differ = lot.id === into.id ? ['nothing: it is one lot'] : inWhatTheyDiffer(identityOf(lot), identityOf(into));
  if (lot.origin !== into.origin || lot.origin === 'taken-off') differ.push('how they came here');
  if (differ.length > 0)
    throw new Problem('lots-differ', `${lot.code} and ${into.code} differ in ${differ.join(', ')}`, { differ }, [
      { pointer: '/intoId', detail: `They differ in ${differ.join(', ')}` },
    ]);
}

/** Kits keep what was promised to them, under the label that stays. */
async function passPromises({ tx, input, newId }: Merging): Promise<void> {
  const promises = await tx.reservation.findMany({ where: { lotId: input.lotId } });
  for (const { kitLineId, quantity, createdAt } of promises)
    await tx.reservation.upsert({
      where: { kitLineId_lotId: { kitLineId, lotId: input.intoId } },
      create: { id: newId(), kitLineId, lotId: input.intoId, quantity, createdAt },
      update: { quantity: { increment: quantity } },
    });
  await tx.reservation.deleteMany({ where: { lotId: input.lotId } });
}
