import { Problem } from '@hubwright/contracts/problems';
import { found } from '../../platform/command/version.ts';
import { askIn } from './ask.ts';
import { type Held, heldAt } from './held.ts';
import type { Kit, KitContext, Line } from './kit.ts';

export interface InRack {
  readonly held: Held;
  readonly line: Line;
}

/** One lot in the rack of this kit's unit with the line it was taken off, or `not-in-rack`. */
export async function rackLot({ tx }: KitContext, kit: Kit, lotId: string): Promise<InRack> {
  const lot = found(await tx.lot.findUnique({ where: { id: lotId }, select: { code: true } }), 'This lot');
  const rack = await heldAt(askIn(tx), { kind: 'rack', ref: kit.workOrderId });
  const held = rack.find((each) => each.lotId === lotId);
  const line = kit.lines.find(({ id }) => id === held?.lineId);
  if (held && line) return { held, line };
  throw new Problem('not-in-rack', `${lot.code} is not in the rack of ${kit.workOrder.number} for ${kit.code}`, {
    lot: lot.code,
    kit: kit.code,
  });
}
