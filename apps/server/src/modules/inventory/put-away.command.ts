import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { binExists, lotLocks, onHandAt, theLot } from './lot.ts';
import { moveStock } from './move-stock.ts';
import { quarantine } from './place.ts';

/** Accepted pieces go from quarantine to a bin; without a quantity all of them. */
export const putAway = defineCommand(inventoryOperations.putAway, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input } = context;
    const lot = await theLot(tx, input.lotId);
    if (lot.state !== 'accepted')
      throw new Problem('lot-not-accepted', `${lot.code} is ${lot.state}`, { lot: lot.code });
    await binExists(tx, input.bin);
    const quantity = input.quantity ?? (await onHandAt(tx, lot.id, quarantine));
    if (quantity === 0) throw new Problem('not-enough', `Nothing of ${lot.code} is in quarantine`, { lot: lot.code });
    const to = { kind: 'bin', ref: input.bin } as const;
    const moved = await moveStock(context, { lot, quantity, from: quarantine, to, reason: 'put away' });
    return {
      reply: { id: lot.id, ...moved },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: moved.version }],
      facts: { code: lot.code, quantity, bin: input.bin },
    };
  },
});
