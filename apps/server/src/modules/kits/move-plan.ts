import { quantityText } from '@hubwright/contracts/inventory/quantity';
import { Problem } from '@hubwright/contracts/problems';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { type StockLot, stockOfParts } from '../inventory/public.ts';
import { askIn } from './ask.ts';
import { misfitProblem, needOf } from './fitting.ts';
import { type Kit, type Line, lineOf, openKit } from './kit.ts';
import { figuresOf, toPull } from './line-figures.ts';
import { buildDay, standIns } from './stand-ins.ts';

export interface Taken {
  readonly reservationId: string;
  readonly lineId: string;
  readonly kitId: string;
  readonly kitCode: string;
  readonly workOrderId: string;
  readonly quantity: number;
  /** Nothing of the promise is left. */
  readonly isAll: boolean;
}

/** Which pieces of a lot go to which line, and who gives them. */
export interface MovePlan {
  readonly kit: Kit;
  readonly line: Line;
  readonly lot: StockLot;
  readonly quantity: number;
  readonly fromFree: number;
  readonly takenFrom: readonly Taken[];
}

export interface MoveAsked {
  readonly lotId: string;
  readonly kitId: string;
  readonly lineId?: string | undefined;
  readonly quantity?: number | undefined;
}

/**
 * A lot moved to a kit: free pieces first, then what is promised to the kits needed last. Frozen promises give nothing. Reads only, so
 * that it may be asked without doing it.
 */
export async function planMove(tx: Tx, asked: MoveAsked, today: string): Promise<MovePlan> {
  const kit = await openKit(tx, asked.kitId);
  const named = found(await tx.lot.findUnique({ where: { id: asked.lotId } }), 'This lot');
  const lot = (await stockOfParts(tx, [named.partId])).find(({ id }) => id === named.id);
  if (!lot) throw new Problem('not-enough', `Nothing of ${named.code} that fits lies in a bin`, { lot: named.code });
  const day = buildDay(fromDbDate(kit.needBy), today);
  const { line, needs, parts } = await lineFor(tx, kit, { lot, lineId: asked.lineId, day });
  const misfit = misfitProblem(kit, lot, needOf(kit, parts, today));
  if (misfit) throw misfit;
  const promises = await promisesOf(tx, lot.id);
  const firm = promises.filter(({ kitId, isFrozen }) => isFrozen || kitId === kit.id);
  const most = lot.onHand - sum(firm);
  const quantity = asked.quantity ?? Math.min(needs, most);
  refuseTooMany({ kit, line, lot }, { quantity, needs, most, firm });
  const fromFree = Math.min(quantity, lot.facts.free);
  const soft = promises.filter((each) => !firm.includes(each));
  return { kit, line, lot, quantity, fromFree, takenFrom: takeLast(soft, quantity - fromFree) };
}

/** The same for a view. Nothing is written on this way, so the read-only models serve as well. */
export function planForView(models: Reads['models'], asked: MoveAsked, today: string): Promise<MovePlan> {
  return planMove(models as unknown as Tx, asked, today);
}

/** The line of the kit that the lot would serve: the one named, else the first that still needs something. */
async function lineFor(tx: Tx, kit: Kit, of: { lot: StockLot; lineId: string | undefined; day: string }) {
  const { lot, lineId, day } = of;
  const lines = lineId === undefined ? kit.lines : [lineOf(kit, lineId)];
  const known = await standIns(
    askIn(tx),
    lines.map(({ partId }) => partId),
  );
  const usable = (partId: string) => known.parts(partId, day);
  const figures = await figuresOf(askIn(tx), [kit.id]);
  const isTornDown = kit.lines.some(({ id }) => figures(id).cameOn > 0);
  const fitting = lines
    .filter((line) => usable(line.partId).includes(lot.partId))
    .map((line) => ({
      line,
      parts: usable(line.partId),
      needs: Math.max(0, toPull(line, figures(line.id), isTornDown) - figures(line.id).reserved),
    }));
  const [first] = fitting;
  if (!first)
    throw new Problem('part-not-on-kit', `${kit.code} needs no ${lot.partNumber}`, {
      lot: lot.code,
      part: lot.partNumber,
    });
  return fitting.find(({ needs }) => needs > 0) ?? first;
}

type PromiseOf = Omit<Taken, 'isAll'> & { readonly isFrozen: boolean };

async function promisesOf(tx: Tx, lotId: string): Promise<PromiseOf[]> {
  const rows = await tx.reservation.findMany({
    where: { lotId },
    include: { kitLine: { select: { kit: { select: { id: true, code: true, workOrderId: true } } } } },
    orderBy: [{ kitLine: { kit: { needBy: 'desc' } } }, { createdAt: 'desc' }],
  });
  return rows.map(({ id, kitLineId, quantity, frozenAt, kitLine: { kit } }) => ({
    ...{ reservationId: id, lineId: kitLineId, quantity, isFrozen: frozenAt !== null },
    ...{ kitId: kit.id, kitCode: kit.code, workOrderId: kit.workOrderId },
  }));
}

function refuseTooMany(
  { kit, line, lot }: Pick<MovePlan, 'kit' | 'line' | 'lot'>,
  of: { quantity: number; needs: number; most: number; firm: readonly PromiseOf[] },
): void {
  const { quantity, needs, most, firm } = of;
  const text = (pieces: number) => quantityText(pieces, line.part.issueUnit);
  if (needs === 0 || quantity > needs)
    throw new Problem(
      'more-than-needed',
      `${kit.code} (${line.position}) has ${text(needs)} open that is not promised`,
      {
        needed: needs,
      },
    );
  if (quantity > lot.onHand)
    throw new Problem('not-enough', `${lot.code} has ${text(lot.onHand)}`, { lot: lot.code, onHand: lot.onHand });
  if (quantity > most || most <= 0) {
    const whose = [...new Set(firm.map(({ kitCode }) => kitCode))].join(', ');
    throw new Problem(
      'lot-reserved',
      `${text(Math.max(0, most))} of ${lot.code} can be had: the rest is set aside for ${whose}`,
      {
        lot: lot.code,
      },
    );
  }
}

/** Who gives the pieces: the kit needed last first. */
function takeLast(promises: readonly PromiseOf[], pieces: number): Taken[] {
  let left = pieces;
  return promises.flatMap(({ isFrozen: _, ...promise }) => {
    const quantity = Math.min(left, promise.quantity);
    left -= quantity;
    return quantity === 0 ? [] : [{ ...promise, quantity, isAll: quantity === promise.quantity }];
  });
}

function sum(promises: readonly { quantity: number }[]): number {
  return promises.reduce((total, { quantity }) => total + quantity, 0);
}
