import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { type Place, scrap } from '../inventory/public.ts';
import { askIn } from './ask.ts';
import { holding, moveHeld, takeFrom } from './from-holding.ts';
import { type Held, heldAt } from './held.ts';
import { type Kit, kitSubjects, openKit, touchKit } from './kit.ts';
import { figuresOf } from './line-figures.ts';
import { heldForOwner, witnessNeeded } from './witness-needed.ts';

type Clearing = Context<typeof kitsOperations.clearRack>;

/**
 * Old parts leave the job: to scrap, back to their owner, or held as the owner's until given up, as is what is not scrapped
 * without a witness. What goes back into the unit stays.
 */
export const clearRack = defineCommand(kitsOperations.clearRack, {
  async locks(input, tx) {
    const kit = await tx.kit.findUnique({
      where: { id: input.kitId },
      include: { lines: { select: { partId: true } } },
    });
    return [`kit:${input.kitId}`, ...(kit?.lines ?? []).map(({ partId }) => `part:${partId}`)];
  },
  async execute(context) {
    const { tx, input } = context;
    const kit = await openKit(tx, input.kitId);
    const leaving = await chosen(context, kit);
    const unseen = input.to === 'scrap' ? await witnessNeeded(context, kit) : () => false;
    const kept = leaving.filter(unseen);
    const { reason } = input;
    const from = holding(kit, 'rack');
    const owner: Place = { kind: 'customer', ref: kit.workOrder.customerId };
    const to = { scrap, customer: owner, held: heldForOwner(kit) }[input.to];
    await moveHeld(
      context,
      leaving.filter((each) => !unseen(each)),
      { from, to, reason },
    );
    await moveHeld(context, kept, { from, to: heldForOwner(kit), reason });
    const reply = await touchKit(tx, kit);
    const [cleared, held] = [pieces(leaving), input.to === 'held' ? pieces(leaving) : pieces(kept)];
    return {
      reply: { ...reply, cleared, held },
      subjects: kitSubjects(
        kit,
        reply.version,
        leaving.map(({ lotId }) => lotId),
      ),
      facts: {
        kit: kit.code,
        to: input.to,
        held,
        lots: leaving.map(({ lotCode, quantity }) => ({ lotCode, quantity })),
      },
      reason,
    };
  },
});

function pieces(held: readonly Held[]): number {
  return held.reduce((sum, { quantity }) => sum + quantity, 0);
}

async function chosen(context: Clearing, kit: Kit): Promise<Held[]> {
  const { tx, input } = context;
  const mine = new Set(kit.lines.map(({ id }) => id));
  const rack = (await heldAt(askIn(tx), holding(kit, 'rack'))).filter(({ lineId }) => lineId && mine.has(lineId));
  const goesBack = await whatGoesBack(context, kit);
  if (!input.lots) return rack.filter((held) => !goesBack(held, 'most'));
  return input.lots.flatMap(({ lotId, quantity }) => {
    const held = rack.filter((each) => each.lotId === lotId);
    if (held.length === 0) throw new Problem('not-in-rack', 'One of these lots is not in the rack', { lotId });
    const kept = held.find((each) => goesBack(each, 'least'));
    if (kept) throw new Problem('goes-back-in', `${kept.lotCode} goes back to ${kept.position}`, { lot: kept.lotCode });
    return takeFrom(held, quantity);
  });
}

/**
 * A part goes back while its line takes used parts and still lacks pieces; nothing does when the work was declined. What an
 * as-needed line may take beyond its least leaves only by name.
 */
async function whatGoesBack({ tx }: Clearing, kit: Kit): Promise<(held: Held, upTo: 'least' | 'most') => boolean> {
  const { consent, stage } = kit.workOrder;
  if (consent === 'declined' || stage === 'returning-unrepaired') return () => false;
  const figures = await figuresOf(askIn(tx), [kit.id]);
  return ({ lineId }, upTo) => {
    const line = kit.lines.find(({ id }) => id === lineId);
    if (!line || line.source === 'new') return false;
    const { installed, inTray } = figures(line.id);
    return installed + inTray < (upTo === 'least' ? (line.minimum ?? line.quantity) : line.quantity);
  };
}
