import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { binExists } from '../inventory/public.ts';
import { holding, moveHeld, scannedAt, takeFrom } from './from-holding.ts';
import { kitLocks, openKit } from './kit.ts';
import { scanned } from './scan-reply.ts';

/** Unused pieces go back to a bin; without a quantity all of the lot. */
export const returnFromTray = defineCommand(kitsOperations.returnFromTray, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { code: input.lotCode }),
  async execute(context) {
    const { tx, input } = context;
    const kit = await openKit(tx, input.kitId);
    const held = takeFrom(await scannedAt(context, kit, { kind: 'tray', code: input.lotCode }), input.quantity);
    await binExists(tx, input.bin);
    const moved = await moveHeld(context, held, {
      from: holding(kit, 'tray'),
      to: { kind: 'bin', ref: input.bin },
      reason: 'returned from the tray',
    });
    return scanned(context, kit, {
      lotCode: input.lotCode,
      held,
      movementIds: moved.map(({ movementId }) => movementId),
      did: `returned to ${input.bin}`,
    });
  },
});
