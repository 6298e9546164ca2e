import { Problem } from '@hubwright/contracts/problems';
import { addMoney, type Money, multiplyPrice } from '@hubwright/rules/money';
import type { Tx } from '../../platform/database/client.ts';
import { scrap } from '../inventory/public.ts';
import { askIn } from './ask.ts';
import { moveHeld } from './from-holding.ts';
import { heldAt } from './held.ts';
import type { KitContext } from './kit.ts';
import { type SealInUnit, sealsInUnit } from './seals.ts';

/** What uses the seals up: a step and its signature, in words, and why. */
export interface UsedUp {
  readonly stepId: string;
  readonly signOffId: string;
  readonly cause: string;
  readonly reason: string;
}

/** Everything that replacing seals of these lines moves: parts in the order they are locked. */
export async function sealLocks(tx: Tx, lineIds: readonly string[]): Promise<string[]> {
  const lines = await tx.kitLine.findMany({ where: { id: { in: [...lineIds] } }, select: { partId: true } });
  return [...new Set(lines.map(({ partId }) => `part:${partId}`))];
}

/**
 * The seals of these lines leave the unit for the scrap, and their lines ask stock for new ones, which the shop pays for: the customer
 * pays for a line once. Throws `seal-not-in-unit`. Call under `kitsOf` and {@link sealLocks}. Answers the lines with what new ones cost today.
 */
export async function replaceSeals(
  context: KitContext,
  workOrderId: string,
  { lineIds, by }: { lineIds: readonly string[]; by: UsedUp },
): Promise<{ seals: SealInUnit[]; cost: Money; subjects: { kind: string; id: string }[] }> {
  const { tx, entryId, newId, now } = context;
  const shop = await tx.shopProfile.findUniqueOrThrow({ where: { id: 1 }, select: { currency: true } });
  const seals = await chosenSeals(tx, workOrderId, lineIds);
  const kept = { ...by, at: now, entryId };
  await tx.shopCostPart.createMany({
    data: seals.map(({ lineId, part, position, quantity, unitPrice }) => ({
      ...{ id: newId(), workOrderId, kitLineId: lineId, partId: part.id, position, quantity, unitPrice },
      ...kept,
    })),
  });
  const held = (await heldAt(askIn(tx), { kind: 'unit', ref: workOrderId })).filter(({ lineId }) =>
    seals.some((seal) => seal.lineId === lineId),
  );
  const reason = `${by.cause}: ${by.reason}`;
  await moveHeld(context, held, { from: { kind: 'unit', ref: workOrderId }, to: scrap, reason });
  const kitIds = [...new Set(seals.map(({ kitId }) => kitId))];
  await tx.kit.updateMany({ where: { id: { in: kitIds } }, data: { version: { increment: 1 } } });
  const nothing = { currency: shop.currency, minor: 0 };
  return {
    seals,
    cost: addMoney(nothing, ...seals.map((seal) => multiplyPrice(seal.unitPrice, seal.quantity, shop.currency))),
    subjects: [
      ...kitIds.map((id) => ({ kind: 'kit', id })),
      ...[...new Set(held.map(({ lotId }) => lotId))].map((id) => ({ kind: 'lot', id })),
    ],
  };
}

async function chosenSeals(tx: Tx, workOrderId: string, lineIds: readonly string[]): Promise<SealInUnit[]> {
  const all = await sealsInUnit(askIn(tx), workOrderId);
  const known = new Set(all.map(({ lineId }) => lineId));
  const strange = lineIds.findIndex((id) => !known.has(id));
  if (strange >= 0)
    throw new Problem('seal-not-in-unit', 'A chosen line has no seal in the unit', {}, [
      { pointer: `/seals/${strange}`, detail: 'No seal of this line is in the unit' },
    ]);
  return all.filter(({ lineId }) => lineIds.includes(lineId));
}
