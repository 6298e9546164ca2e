import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { scrap } from '../inventory/public.ts';
import { holding, moveHeld, scannedAt, takeFrom } from './from-holding.ts';
import { kitLocks, openKit } from './kit.ts';
import { scanned } from './scan-reply.ts';

/** Damaged at the bench: the pieces are scrapped, and their line asks stock for new ones. */
export const scrapFromTray = defineCommand(kitsOperations.scrapFromTray, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { code: input.lotCode }),
  async execute(context) {
    const { tx, input } = context;
    const kit = await openKit(tx, input.kitId);
    const held = takeFrom(await scannedAt(context, kit, { kind: 'tray', code: input.lotCode }), input.quantity);
    if (held.some(({ ownerId }) => ownerId !== null))
      throw new Problem('owned-by-customer', `${input.lotCode} is not the shop’s to scrap`, { lot: input.lotCode });
    const moved = await moveHeld(context, held, { from: holding(kit, 'tray'), to: scrap, reason: input.reason });
    const done = await scanned(context, kit, {
      lotCode: input.lotCode,
      held,
      movementIds: moved.map(({ movementId }) => movementId),
      did: 'scrapped',
    });
    return { ...done, reason: input.reason };
  },
});
