import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { scrap } from '../inventory/public.ts';
import { askIn } from './ask.ts';
import { holding, moveHeld, takeFrom } from './from-holding.ts';
import { kitLocks, kitSubjects, openKit, touchKit } from './kit.ts';
import { figuresOf } from './line-figures.ts';
import { newInstead } from './new-instead.ts';
import { rackLot } from './rack.ts';
import { heldForOwner, witnessNeeded } from './witness-needed.ts';

/** Worn out: rack to scrap, or held for its owner where a witness must see it go. As many as the position then lacks are asked of stock, new. */
export const replaceRackPart = defineCommand(kitsOperations.replaceRackPart, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { id: input.lotId }),
  async execute(context) {
    const { tx, input } = context;
    const kit = await openKit(tx, input.kitId);
    const { held, line } = await rackLot(context, kit, input.lotId);
    const taken = takeFrom([held], input.quantity);
    const figures = (await figuresOf(askIn(tx), [kit.id]))(line.id);
    const isHeld = (await witnessNeeded(context, kit))(held);
    const to = isHeld ? heldForOwner(kit) : scrap;
    await moveHeld(context, taken, { from: holding(kit, 'rack'), to, reason: input.reason });
    // A finding may have asked for a new one before; only what is lacking beyond that is asked for now.
    const spare = Math.max(0, figures.inRack + figures.atVendor + figures.installed + figures.inTray - line.quantity);
    const lacking = Math.max(0, input.quantity - spare);
    const lineId = lacking === 0 ? line.id : await newInstead(context, kit, { line, quantity: lacking });
    const reply = await touchKit(tx, kit);
    return {
      reply: { ...reply, lineId, held: isHeld },
      subjects: kitSubjects(kit, reply.version, [held.lotId]),
      facts: {
        ...{ kit: kit.code, lot: held.lotCode, position: line.position },
        ...{ [isHeld ? 'held' : 'scrapped']: input.quantity, asked: lacking },
      },
      reason: input.reason,
    };
  },
});
