import { type Choice, choose } from '@hubwright/rules/stock';
import { fromDbDate } from '../../platform/database/dates.ts';
import { type StockLot, stockOfParts } from '../inventory/public.ts';
import { askIn } from './ask.ts';
import { misfitWords, needOf } from './fitting.ts';
import type { Kit, KitContext, Line } from './kit.ts';
import { type Figures, figuresOf, toPull } from './line-figures.ts';
import { buildDay, standIns } from './stand-ins.ts';

/** The shelf as it stands for one kit, read once; reservations made in the same run are taken off it. */
export interface Shelf {
  readonly lots: Map<string, StockLot>;
  readonly usable: (partId: string) => string[];
  /** Parts of which nothing may be left before another is taken for a line's part. */
  readonly usedUpFirst: (partId: string, usedId: string) => string[];
  readonly figures: (lineId: string) => Figures;
  readonly tornDown: boolean;
}

/** Reads the shelf for these lines. Call under the locks of all parts in `shelfLocks`. */
export async function readShelf({ tx, today }: KitContext, kit: Kit, lines: readonly Line[]): Promise<Shelf> {
  const partIds = lines.map(({ partId }) => partId);
  const known = await standIns(askIn(tx), partIds);
  const day = buildDay(fromDbDate(kit.needBy), today);
  const usable = (partId: string) => known.parts(partId, day);
  const [lots, figures] = [
    await stockOfParts(tx, [...new Set(partIds.flatMap(usable))]),
    await figuresOf(askIn(tx), [kit.id]),
  ];
  const tornDown = kit.lines.some(({ id }) => figures(id).cameOn > 0);
  const usedUpFirst = (partId: string, usedId: string) => known.usedUpFirst({ partId, usedId, day });
  return { lots: new Map(lots.map((lot) => [lot.id, lot])), usable, usedUpFirst, figures, tornDown };
}

/** The parts whose stock a reservation for these parts decides on. */
export async function shelfLocks(tx: KitContext['tx'], partIds: readonly string[]): Promise<string[]> {
  const { parts } = await standIns(askIn(tx), partIds);
  return [...new Set(partIds.flatMap((partId) => parts(partId)))].map((partId) => `part:${partId}`);
}

/** Pieces a line needs that are not promised to it yet. */
export function unpromised(shelf: Shelf, line: Line): number {
  const figures = shelf.figures(line.id);
  return Math.max(0, toPull(line, figures, shelf.tornDown) - figures.reserved);
}

/** What the shelf offers a line: its own part before alternates, earliest expiry first. */
export function offer(shelf: Shelf, asked: { kit: Kit; line: Line; quantity: number; today: string }): Choice {
  const need = needOf(asked.kit, shelf.usable(asked.line.partId), asked.today);
  return choose(
    { ...need, quantity: asked.quantity },
    [...shelf.lots.values()].filter((lot) => need.parts.includes(lot.partId)).map(({ facts }) => facts),
  );
}

export interface Reserved {
  readonly reservationId: string;
  readonly lotId: string;
  readonly lotCode: string;
  readonly quantity: number;
}

/** Writes the promises and takes them off the shelf that was read. */
export async function promise(
  { tx, newId, now }: KitContext,
  shelf: Shelf,
  chosen: { line: Line; picks: Choice['picks'] },
): Promise<Reserved[]> {
  const made: Reserved[] = [];
  for (const { lot: lotId, quantity } of chosen.picks) {
    const kept = await tx.reservation.upsert({
      where: { kitLineId_lotId: { kitLineId: chosen.line.id, lotId } },
      create: { id: newId(), kitLineId: chosen.line.id, lotId, quantity, createdAt: now },
      update: { quantity: { increment: quantity } },
    });
    const lot = shelf.lots.get(lotId);
    if (lot) lot.facts.free -= quantity;
    made.push({ reservationId: kept.id, lotId, lotCode: lot?.code ?? '', quantity });
  }
  return made;
}

/** Why the shelf could not give all, in words. */
export function causeOf(shelf: Shelf, kit: Kit, choice: Choice): string {
  const words = choice.passedOver.flatMap(({ lot: lotId, reason }) => {
    const lot = shelf.lots.get(lotId);
    if (!lot) return [];
    return [reason === 'nothing-free' ? `${lot.code} is promised to other kits` : misfitWords(kit, lot, reason)];
  });
  if (words.length > 0) return words.slice(0, 5).join('; ');
  return choice.picks.length > 0 ? 'there is no more on the shelf' : 'there is none on the shelf';
}
