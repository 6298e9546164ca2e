import { Problem } from '@hubwright/contracts/problems';
import type { Place } from '../inventory/public.ts';
import { askIn } from './ask.ts';
import { moveHeld, takeFrom } from './from-holding.ts';
import { type Held, heldAt } from './held.ts';
import type { KitContext } from './kit.ts';

interface Move {
  readonly lot: { readonly id: string; readonly code: string };
  readonly quantity: number;
  readonly from: Place & { readonly kind: 'rack' | 'vendor' };
  readonly to: Place;
  readonly reason: string;
}

export interface MovedUnderLines {
  /** The lot's version after it. */
  readonly version: number;
  readonly taken: readonly Held[];
}

/**
 * Pieces of a rack go out of the house or come back, each under the kit line it is for: what a line counts on must not look as if it
 * still lay in the rack. Throws `not-enough` when the place does not hold that much.
 */
export async function moveUnderLines(
  context: KitContext,
  { lot, quantity, from, to, reason }: Move,
): Promise<MovedUnderLines> {
  const held = (await heldAt(askIn(context.tx), from)).filter(({ lotId }) => lotId === lot.id);
  if (held.length === 0)
    throw new Problem('not-enough', `Nothing of ${lot.code} is there`, { lot: lot.code, quantity: 0 });
  const taken = takeFrom(held, quantity);
  const moved = await moveHeld(context, taken, { from, to, reason });
  return { taken, version: moved.at(-1)?.version ?? 1 };
}
