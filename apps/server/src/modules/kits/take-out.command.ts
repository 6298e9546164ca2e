import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { type Place, scrap } from '../inventory/public.ts';
import { holding, moveHeld, scannedAt, takeFrom } from './from-holding.ts';
import type { Held } from './held.ts';
import { type Kit, type KitContext, kitLocks, lineOf, openKit } from './kit.ts';
import { newInstead } from './new-instead.ts';
import { scanned } from './scan-reply.ts';
import { heldForOwner, refuseUnseen, witnessNeeded } from './witness-needed.ts';

/** Out of the unit again: back where it came from, or to scrap; its line then lacks it. */
export const takeOut = defineCommand(kitsOperations.takeOut, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { code: input.lotCode }),
  async execute(context) {
    const { tx, input } = context;
    const kit = await openKit(tx, input.kitId);
    const line = lineOf(kit, input.lineId);
    const there = await scannedAt(context, kit, { kind: 'unit', code: input.lotCode, lineId: line.id });
    const held = takeFrom(there, input.quantity);
    const reused = held.some((each) => each.origin === 'taken-off');
    const origin = holding(kit, reused ? 'rack' : 'tray');
    const to = input.to === 'scrap' ? await scrapOrHeld(context, kit, held) : origin;
    const moved = await moveHeld(context, held, { from: holding(kit, 'unit'), to, reason: input.reason });
    if (reused && input.to === 'scrap') await newInstead(context, kit, { line, quantity: input.quantity });
    const done = await scanned(context, kit, {
      lotCode: input.lotCode,
      held,
      movementIds: moved.map(({ movementId }) => movementId),
      did: `taken out, ${to.kind}`,
    });
    return { ...done, reason: input.reason };
  },
});

/** One lot is one owner's: a customer's is held for them where a witness must see it go, the shop's goes by way of the tray. */
async function scrapOrHeld(context: KitContext, kit: Kit, held: readonly Held[]): Promise<Place> {
  const needed = await witnessNeeded(context, kit);
  if (held.some((each) => each.ownerId !== null && needed(each))) return heldForOwner(kit);
  refuseUnseen(held, needed);
  return scrap;
}
