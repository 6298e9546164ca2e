import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { orderLock, undoDelivery } from '../purchasing/public.ts';
import { moveStock } from './move-stock.ts';
import type { Place, PlaceKind } from './place.ts';
import { freeWhatIsGone } from './reservations.ts';

/** Undo by a mirrored movement that names what it reverses. The database holds each movement to one reversal. */
export const reverseMovement = defineCommand(inventoryOperations.reverseMovement, {
  async locks(input, tx) {
    const movement = await tx.movement.findUnique({ where: { id: input.movementId }, include: { lot: true } });
    const orderLine = movement?.lot.purchaseOrderLineId;
    return movement ? [`part:${movement.partId}`, ...(orderLine ? await orderLock(tx, orderLine) : [])] : [];
  },
  async execute(context) {
    const { tx, input } = context;
    const movement = await theMovement(tx, input.movementId);
    await refuseIrreversible(tx, movement);
    const { lot, quantity } = movement;
    const moved = await moveStock(context, {
      lot,
      quantity,
      from: { kind: movement.toKind as PlaceKind, ref: movement.toRef },
      to: { kind: movement.fromKind as PlaceKind, ref: movement.fromRef },
      reason: input.reason,
      reversesId: movement.id,
    });
    if (movement.fromKind === 'supplier' && lot.purchaseOrderLineId)
      await undoDelivery(tx, { lineId: lot.purchaseOrderLineId, quantity });
    const freed = await freeWhatIsGone(tx, lot.id);
    return {
      reply: { id: lot.id, ...moved, freed },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: moved.version }],
      facts: { code: lot.code, reverses: movement.id, quantity, freed },
      reason: input.reason,
    };
  },
});

async function theMovement(tx: Tx, id: string) {
  return found(await tx.movement.findUnique({ where: { id }, include: { lot: true } }), 'This movement');
}

/** What the kit decides is undone there, where both sides of it are seen. */
const undoneElsewhere: Partial<Record<Place['kind'], string>> = {
  tray: 'bring the pieces back from the tray instead',
  unit: 'take the piece out of the unit instead',
  rack: 'the rack is cleared or reused at the build bench',
};

/** What has left for good, or changed its label, is not undone by a mirror image. */
const notUndone: Partial<Record<Place['kind'], string>> = {
  'other-lot': 'split or merge the lots again instead',
  lost: 'write down what came back after all as what it is now: receive it anew',
  held: 'they are held for their owner: give them back or have them given up',
};

async function refuseIrreversible(tx: Tx, movement: Awaited<ReturnType<typeof theMovement>>): Promise<void> {
  const undoneBy = await tx.movement.findUnique({ where: { reversesId: movement.id }, select: { id: true } });
  if (undoneBy) throw new Problem('already-reversed', 'This movement was undone before', { movement: undoneBy.id });
  const elsewhere = undoneElsewhere[movement.toKind as PlaceKind] ?? undoneElsewhere[movement.fromKind as PlaceKind];
  if (elsewhere) throw new Problem('cannot-reverse', `A kit decides about this: ${elsewhere}`);
  const kept = notUndone[movement.toKind as PlaceKind] ?? notUndone[movement.fromKind as PlaceKind];
  if (kept) throw new Problem('cannot-reverse', `This cannot be taken back: ${kept}`);
  if (movement.toKind === 'supplier')
    throw new Problem('cannot-reverse', 'The pieces are back at the supplier: receive what comes again instead');
  if (movement.reversesId)
    throw new Problem('cannot-reverse', 'This is itself an undoing: make the movement again instead');
  if (movement.fromKind === 'bin' && movement.lot.state !== 'accepted')
    throw new Problem('cannot-reverse', `${movement.lot.code} is ${movement.lot.state}: judge the lot again instead`);
}
