import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { scrap } from '../inventory/public.ts';
import { holding, moveHeld, scannedAt, takeFrom } from './from-holding.ts';
import { kitLocks, lineOf, openKit } from './kit.ts';
import { newInstead } from './new-instead.ts';
import { scanned } from './scan-reply.ts';

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
    const to = input.to === 'scrap' ? scrap : origin;
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
