import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { lotLocks, theLot } from './lot.ts';
import { takeOutOfUse } from './out-of-use.ts';

/** A doubt about a lot: all of it in bins goes to quarantine, nothing of it stays promised. What sits in trays is named. */
export const quarantineLot = defineCommand(inventoryOperations.quarantineLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input } = context;
    const lot = await theLot(tx, input.lotId);
    if (lot.state !== 'accepted' || lot.origin === 'taken-off')
      throw new Problem('lot-not-accepted', `${lot.code} is ${lot.state} and not in use`, { lot: lot.code });
    const { reason } = input;
    const { version, freed, elsewhere } = await takeOutOfUse(context, lot, { state: 'quarantine', reason });
    return {
      reply: { id: lot.id, version, freed },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { code: lot.code, freed, elsewhere },
      reason,
    };
  },
});
