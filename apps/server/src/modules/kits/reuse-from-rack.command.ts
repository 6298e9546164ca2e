import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { askIn } from './ask.ts';
import { holding, moveHeld, scannedAt, takeFrom, wanted } from './from-holding.ts';
import { kitLocks, lineOf, openKit, refuseStopped } from './kit.ts';
import { figuresOf, roomIn } from './line-figures.ts';
import { scanned } from './scan-reply.ts';

/** A part that passed inspection goes from the rack back to the position it came from. */
export const reuseFromRack = defineCommand(kitsOperations.reuseFromRack, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { code: input.lotCode }),
  async execute(context) {
    const { tx, input } = context;
    const kit = await openKit(tx, input.kitId);
    refuseStopped(kit);
    const line = lineOf(kit, input.lineId);
    const held = await scannedAt(context, kit, { kind: 'rack', code: input.lotCode, lineId: line.id });
    if (line.source === 'new')
      throw new Problem('new-only', `${line.position} takes a new ${line.part.number}`, { lineId: line.id });
    if (held.some(({ state }) => state !== 'accepted'))
      throw new Problem('not-passed', `${input.lotCode} waits for an inspector`, { lot: input.lotCode });
    const figures = (await figuresOf(askIn(tx), [kit.id]))(line.id);
    const pieces = takeFrom(held, wanted(line, { room: roomIn(line, figures), held, asked: input.quantity }));
    const moved = await moveHeld(context, pieces, {
      from: holding(kit, 'rack'),
      to: holding(kit, 'unit'),
      reason: 'reused after inspection',
    });
    return scanned(context, kit, {
      lotCode: input.lotCode,
      held: pieces,
      movementIds: moved.map(({ movementId }) => movementId),
      did: 'reused',
    });
  },
});
