import type { Subject } from '../../platform/command/command.ts';
import { askIn } from './ask.ts';
import { type KitContext, theKit } from './kit.ts';
import { figuresOf } from './line-figures.ts';
import { newInstead } from './new-instead.ts';

/** Pieces that a kit line counted on, already moved to where nothing comes back from. */
export interface LostPieces {
  readonly lineId: string | null;
  readonly quantity: number;
}

/**
 * As many as a position now lacks are asked of stock, new; nothing where others took their place before, nor in a kit that is closed.
 * Call under the locks of the kits. Answers the pieces asked for and the kits changed.
 */
export async function lostForGood(
  context: KitContext,
  lost: readonly LostPieces[],
): Promise<{ asked: number; kits: Subject[] }> {
  const { tx } = context;
  let asked = 0;
  const before = new Map<string, number>();
  for (const { lineId, quantity } of lost) {
    const of = lineId && (await tx.kitLine.findUnique({ where: { id: lineId }, select: { kitId: true } }));
    if (!of) continue;
    const kit = await theKit(tx, of.kitId);
    const line = kit.lines.find(({ id }) => id === lineId);
    if (kit.state !== 'open' || !line || line.source === 'new') continue;
    const { inRack, atVendor, inTray, installed } = (await figuresOf(askIn(tx), [kit.id]))(line.id);
    const lacking = Math.min(quantity, Math.max(0, line.quantity - inRack - atVendor - inTray - installed));
    if (lacking === 0) continue;
    await newInstead(context, kit, { line, quantity: lacking });
    before.set(kit.id, before.get(kit.id) ?? kit.version);
    asked += lacking;
  }
  const kits: Subject[] = [];
  for (const [id, version] of before) {
    await tx.kit.update({ where: { id }, data: { version: version + 1 } });
    kits.push({ kind: 'kit', id, before: version, after: version + 1 });
  }
  return { asked, kits };
}
