import { quantityText } from '@hubwright/contracts/inventory/quantity';
import { Problem } from '@hubwright/contracts/problems';
import { fromDbDate } from '../../platform/database/dates.ts';
import { type StockLot, stockOfParts } from '../inventory/public.ts';
import { askIn } from './ask.ts';
import { misfitProblem, needOf } from './fitting.ts';
import type { Kit, KitContext, Line } from './kit.ts';
import { figuresOf, toPull } from './line-figures.ts';
import { refuseBeforeOld } from './old-stock-first.ts';
import { buildDay, standIns } from './stand-ins.ts';

/** A line a scanned lot can serve: how much it still needs, and how much of the lot is promised to it. */
export interface Server {
  readonly line: Line;
  readonly needs: number;
  readonly promised: number;
}

export interface Share {
  readonly line: Line;
  readonly quantity: number;
  readonly stillNeeds: number;
}

/**
 * The lines of a kit that a scanned lot may serve, those it is promised to first, then those that name its very part. Throws
 * why the lot may not be used at all.
 */
export async function linesFor(
  { tx, today }: KitContext,
  asked: { kit: Kit; lot: StockLot; lineId: string | undefined },
): Promise<Server[]> {
  const { kit, lot, lineId } = asked;
  const known = await standIns(
    askIn(tx),
    kit.lines.map(({ partId }) => partId),
  );
  const day = buildDay(fromDbDate(kit.needBy), today);
  const fitting = kit.lines.filter(
    (line) =>
      line.source !== 'reused' &&
      known.parts(line.partId, day).includes(lot.partId) &&
      (lineId === undefined || line.id === lineId),
  );
  if (fitting.length === 0 || lot.origin === 'taken-off') throw notOnKit(kit, lot);
  const problem = misfitProblem(kit, lot, needOf(kit, [lot.partId], today));
  if (problem) throw problem;
  const figures = await figuresOf(askIn(tx), [kit.id]);
  const tornDown = kit.lines.some(({ id }) => figures(id).cameOn > 0);
  const promises = await tx.reservation.findMany({ where: { lotId: lot.id, kitLine: { kitId: kit.id } } });
  const promised = new Map(promises.map((each) => [each.kitLineId, each.quantity]));
  const early = fitting.flatMap(({ partId }) => known.usedUpFirst({ partId, usedId: lot.partId, day }));
  const isPromised = fitting.some(({ id }) => promised.has(id));
  if (!isPromised) refuseBeforeOld({ kit, lot, today }, await stockOfParts(tx, [...new Set(early)]));
  return fitting
    .map((line) => ({ line, needs: toPull(line, figures(line.id), tornDown), promised: promised.get(line.id) ?? 0 }))
    .sort((a, b) => Number(b.promised > 0) - Number(a.promised > 0) || own(b, lot) - own(a, lot));
}

function own({ line }: Server, lot: StockLot): number {
  return Number(line.partId === lot.partId);
}

/**
 * How the scanned pieces are shared out. Without a quantity the first line that needs some gets all it needs, as far as the
 * lot goes; a stated quantity is served whole or refused. What is promised to another line stays there.
 */
export function share(asked: {
  kit: Kit;
  lot: StockLot;
  servers: readonly Server[];
  quantity: number | undefined;
}): Share[] {
  const { lot, servers, quantity } = asked;
  const room = servers.reduce((sum, { needs }) => sum + needs, 0);
  if (room === 0 || (quantity ?? 0) > room)
    throw tooMany(asked.kit, lot, { room, unit: servers[0]?.line.part.issueUnit ?? 'piece' });
  const shares: Share[] = [];
  let { onHand } = lot;
  let { free } = lot.facts;
  let left = quantity ?? Number.POSITIVE_INFINITY;
  for (const { line, needs, promised } of servers) {
    const given = Math.min(left, needs, onHand, promised + free);
    if (given <= 0) continue;
    shares.push({ line, quantity: given, stillNeeds: needs - given });
    onHand -= given;
    free -= Math.max(0, given - promised);
    left = quantity === undefined ? 0 : left - given;
  }
  if (shares.length === 0 || (quantity !== undefined && left > 0)) throw cannotGive(lot, quantity ?? 1);
  return shares;
}

function notOnKit(kit: Kit, lot: StockLot): Problem {
  const detail =
    lot.origin === 'taken-off'
      ? `${lot.code} came off a unit; it is no stock`
      : `${kit.code} does not need ${lot.partNumber} (${lot.code})`;
  return new Problem('part-not-on-kit', detail, { lot: lot.code, part: lot.partNumber, kit: kit.code });
}

function tooMany(kit: Kit, lot: StockLot, { room, unit }: { room: number; unit: string }): Problem {
  return new Problem(
    'more-than-needed',
    room === 0
      ? `${kit.code} has all the ${lot.partNumber} it needs`
      : `${kit.code} still needs ${quantityText(room, unit)} of ${lot.partNumber}`,
    { lot: lot.code, needed: room },
    [{ pointer: '/quantity', detail: `Still needed: ${room}` }],
  );
}

function cannotGive(lot: StockLot, wanted: number): Problem {
  if (lot.onHand < wanted)
    return new Problem('not-enough', `${lot.code} has ${lot.onHand} in bins`, { lot: lot.code, onHand: lot.onHand });
  return new Problem(
    'lot-reserved',
    `${lot.code} has ${lot.onHand}, but only ${lot.facts.free} are not promised elsewhere`,
    { lot: lot.code, free: lot.facts.free },
  );
}
