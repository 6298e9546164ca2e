import { givingBackOperations } from '@hubwright/contracts/inventory/giving-back-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { lotLocks, theLot } from './lot.ts';
import { moveStock } from './move-stock.ts';

/** What was held for its owner goes back to them. What they gave up in writing does not: it is destroyed. */
export const giveBackLot = defineCommand(givingBackOperations.giveBackLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input, expectedVersion } = context;
    const lot = await theLot(tx, input.lotId);
    sameVersion(lot.version, expectedVersion);
    if (!lot.ownerId) throw new Problem('not-a-customers', `${lot.code} is the shop’s own`, { lot: lot.code });
    const letter = await tx.surrender.findFirst({ where: { lotId: lot.id }, select: { letter: true } });
    if (letter)
      throw new Problem('already-surrendered', `${lot.code} was given up by ${letter.letter}`, { lot: lot.code });
    const { quantity, reference } = input;
    const { movementId, version } = await moveStock(context, {
      ...{ lot, quantity, reason: `given back: ${reference}` },
      from: { kind: 'held', ref: lot.ownerId },
      to: { kind: 'customer', ref: lot.ownerId },
    });
    return {
      reply: { id: lot.id, version, movementId },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { code: lot.code, part: lot.part.number, quantity, reference },
      reason: reference,
    };
  },
});
