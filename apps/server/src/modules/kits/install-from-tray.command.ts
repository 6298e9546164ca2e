import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { askIn } from './ask.ts';
import { holding, moveHeld, scannedAt, takeFrom, wanted } from './from-holding.ts';
import type { Held } from './held.ts';
import { kitLocks, lineOf, openKit, refuseStopped } from './kit.ts';
import { figuresOf, roomIn } from './line-figures.ts';
import { scanned } from './scan-reply.ts';

/** A new piece goes from the tray into the unit at the line's position. */
export const installFromTray = defineCommand(kitsOperations.installFromTray, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { code: input.lotCode }),
  async execute(context) {
    const { tx, input, today } = context;
    const kit = await openKit(tx, input.kitId);
    refuseStopped(kit);
    const line = lineOf(kit, input.lineId);
    if (line.source === 'reused')
      throw new Problem('reused-only', `${line.position} takes the unit’s own ${line.part.number}`, {
        lineId: line.id,
      });
    const held = await scannedAt(context, kit, { kind: 'tray', code: input.lotCode, lineId: line.id });
    refuseUnfit(held, today);
    const figures = (await figuresOf(askIn(tx), [kit.id]))(line.id);
    const pieces = takeFrom(held, wanted(line, { room: roomIn(line, figures), held, asked: input.quantity }));
    const moved = await moveHeld(context, pieces, {
      from: holding(kit, 'tray'),
      to: holding(kit, 'unit'),
      reason: 'installed',
    });
    return scanned(context, kit, {
      lotCode: input.lotCode,
      held: pieces,
      movementIds: moved.map(({ movementId }) => movementId),
      did: 'installed',
    });
  },
});

/** A lot may have expired, or been held, since it was issued. */
function refuseUnfit(held: readonly Held[], today: string): void {
  const [lot] = held;
  if (!lot) return;
  if (lot.state !== 'accepted')
    throw new Problem('lot-not-accepted', `${lot.lotCode} was taken out of use`, { lot: lot.lotCode });
  if (lot.expiresOn && lot.expiresOn <= today)
    throw new Problem('lot-expired', `${lot.lotCode} expired on ${lot.expiresOn}`, { lot: lot.lotCode });
}
