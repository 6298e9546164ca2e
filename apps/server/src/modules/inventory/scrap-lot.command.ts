import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { lotLocks, theLot } from './lot.ts';
import { moveStock } from './move-stock.ts';
import { binOrQuarantine, scrap } from './place.ts';
import { freeWhatIsGone } from './reservations.ts';

/** The shop's own pieces are scrapped with a reason; a customer's stay the customer's until given up. */
export const scrapLot = defineCommand(inventoryOperations.scrapLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input } = context;
    const lot = await theLot(tx, input.lotId);
    if (lot.ownerId)
      throw new Problem('owned-by-customer', `${lot.code} is not the shop’s to scrap`, { lot: lot.code });
    const { movementId, version } = await moveStock(context, {
      lot,
      quantity: input.quantity,
      from: binOrQuarantine(input.bin),
      to: scrap,
      reason: input.reason,
    });
    const freed = await freeWhatIsGone(tx, lot.id);
    return {
      reply: { id: lot.id, version, movementId, freed },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { code: lot.code, quantity: input.quantity, from: input.bin ?? 'quarantine', freed },
      reason: input.reason,
    };
  },
});
