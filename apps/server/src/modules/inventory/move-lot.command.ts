import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { lotForBin, lotLocks } from './lot.ts';
import { moveStock } from './move-stock.ts';

/** Pieces change their bin; promises to kits are of the lot, so they stay. */
export const moveLot = defineCommand(inventoryOperations.moveLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input } = context;
    const lot = await lotForBin(tx, input.lotId, input.to);
    const moved = await moveStock(context, {
      lot,
      quantity: input.quantity,
      from: { kind: 'bin', ref: input.from },
      to: { kind: 'bin', ref: input.to },
      reason: 'moved',
    });
    return {
      reply: { id: lot.id, ...moved },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: moved.version }],
      facts: { code: lot.code, quantity: input.quantity, from: input.from, to: input.to },
    };
  },
});
