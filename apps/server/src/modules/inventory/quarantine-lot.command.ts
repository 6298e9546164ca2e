import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { lotLocks, theLot } from './lot.ts';
import { moveStock } from './move-stock.ts';
import { quarantine } from './place.ts';
import { freeWhatIsGone } from './reservations.ts';

/** A doubt about a lot: all of it in bins goes to quarantine, nothing of it stays promised. What sits in trays is named. */
export const quarantineLot = defineCommand(inventoryOperations.quarantineLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input } = context;
    const lot = await theLot(tx, input.lotId);
    if (lot.state !== 'accepted' || lot.origin === 'taken-off')
      throw new Problem('lot-not-accepted', `${lot.code} is ${lot.state} and not in use`, { lot: lot.code });
    const freed = await freeWhatIsGone(tx, lot.id, { all: true });
    const held = await tx.lot.update({
      where: { id: lot.id },
      data: { state: 'quarantine', version: { increment: 1 } },
    });
    let version = held.version;
    const places = await tx.balance.findMany({ where: { lotId: lot.id, onHand: { gt: 0 } } });
    for (const bin of places.filter(({ placeKind }) => placeKind === 'bin')) {
      const from = { kind: 'bin', ref: bin.placeRef } as const;
      const moved = await moveStock(context, { lot, quantity: bin.onHand, from, to: quarantine, reason: input.reason });
      version = moved.version;
    }
    const elsewhere = places
      .filter(({ placeKind }) => placeKind === 'tray' || placeKind === 'unit')
      .map(({ placeKind, placeRef, onHand }) => ({ kind: placeKind, ref: placeRef, quantity: onHand }));
    return {
      reply: { id: lot.id, version, freed },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { code: lot.code, freed, elsewhere },
      reason: input.reason,
    };
  },
});
