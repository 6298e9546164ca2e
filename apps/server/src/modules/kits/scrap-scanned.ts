import { Problem } from '@hubwright/contracts/problems';
import { scrap } from '../inventory/public.ts';
import { holding, moveHeld, scannedAt, takeFrom } from './from-holding.ts';
import type { Held } from './held.ts';
import { type Kit, type KitContext, openKit } from './kit.ts';
import { scanned } from './scan-reply.ts';

interface Scrapping extends KitContext {
  readonly input: {
    readonly kitId: string;
    readonly lotCode: string;
    readonly quantity: number;
    readonly reason: string;
  };
}

/** Pieces of the shop from the tray to scrap; `allowed` may refuse them first. */
export async function scrapScanned(
  context: Scrapping,
  allowed?: (held: readonly Held[], kit: Kit) => Promise<void>,
): Promise<{ kit: Kit; held: Held[]; done: Awaited<ReturnType<typeof scanned>> }> {
  const { tx, input } = context;
  const kit = await openKit(tx, input.kitId);
  const held = takeFrom(await scannedAt(context, kit, { kind: 'tray', code: input.lotCode }), input.quantity);
  if (held.some(({ ownerId }) => ownerId !== null))
    throw new Problem('owned-by-customer', `${input.lotCode} is not the shop’s to scrap`, { lot: input.lotCode });
  await allowed?.(held, kit);
  const moved = await moveHeld(context, held, { from: holding(kit, 'tray'), to: scrap, reason: input.reason });
  const movementIds = moved.map(({ movementId }) => movementId);
  return {
    kit,
    held,
    done: await scanned(context, kit, { lotCode: input.lotCode, held, movementIds, did: 'scrapped' }),
  };
}
