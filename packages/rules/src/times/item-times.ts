import { figureOn, type MeterReading, meterName, type Piece } from './pieces.ts';
import type { Installation, Reading, Tenths } from './times-input.ts';
import { type Time, type UnitTimes, unitsInTime } from './units-in-time.ts';

/**
 * What papers said on a day. `declared`: by whoever brought it. `established`: read in a paper and signed by an inspector.
 * `overhaul`: one was approved that day.
 */
export type Paper = {
  date: string;
  kind: 'declared' | 'established' | 'overhaul';
  basis: string;
  sinceNewTenths: Tenths;
  sinceOverhaulTenths: Tenths;
};

type Which = 'sinceNew' | 'sinceOverhaul';

/** From which paper on time is counted. */
export type Start = { date: string; tenths: Tenths; basis: string };

export type ExplainedTime = Time & {
  start: Start | null;
  /** The newest overhaul that restarted it; null for time since new and where there was none after the start. */
  restartedOn: string | null;
  countedThrough: string;
};

export type CountedPiece = Piece & {
  flown: Time;
  /** Whether it is part of this total; a piece before the start is in what the papers carried. */
  counts: { sinceNew: boolean; sinceOverhaul: boolean };
};

/** A paper that says something else than what is computed for its day. */
export type Doubt = { date: string; which: Which; saidTenths: number; computed: Time; basis: string };

export type ItemTimes = Record<Which, ExplainedTime> & { pieces: CountedPiece[]; doubts: Doubt[] };

export type ItemTimesInput = {
  asOf: string;
  /** In the order they were recorded on. */
  papers: readonly Paper[];
  pieces: readonly Piece[];
  readings: readonly MeterReading[];
};

/**
 * The times of an item on a day, each with the paper it starts from. Time is never typed over: a later declaration is taken
 * only where what is on record gives no answer and it does not fall below what is known to have been flown; where there is an
 * answer and it says another, it is a doubt to be asked about. A paper an inspector signed is a new start. Source: common
 * practice, no source; the sums are those of `unitsInTime`.
 *
 * @throws RuleError as `unitsInTime`
 * @example declared 100.0 h, flown 20.0 h on one propeller and 30.0 h on another: 1500 tenths
 */
export function itemTimes(input: ItemTimesInput): ItemTimes {
  const papers = input.papers.filter(({ date }) => date <= input.asOf);
  const history: History = { ...input, papers, readings: input.readings.map(named) };
  const [sinceNew, sinceOverhaul] = [explain(history, 'sinceNew'), explain(history, 'sinceOverhaul')];
  const pieces = history.pieces
    .filter(({ from }) => from <= input.asOf)
    .map((piece) => ({
      ...piece,
      flown: flownIn(piece, history),
      counts: { sinceNew: isAfter(piece, sinceNew.time), sinceOverhaul: isAfter(piece, sinceOverhaul.time) },
    }));
  return {
    sinceNew: sinceNew.time,
    sinceOverhaul: sinceOverhaul.time,
    pieces,
    doubts: [...sinceNew.doubts, ...sinceOverhaul.doubts],
  };
}

type History = Omit<ItemTimesInput, 'readings'> & { readings: Reading[] };

function named(reading: MeterReading): Reading {
  return { meter: meterName(reading), date: reading.date, tenths: reading.tenths };
}

function explain(history: History, which: Which): { time: ExplainedTime; doubts: Doubt[] } {
  const doubts: Doubt[] = [];
  let at = 0;
  history.papers.forEach((paper, i) => {
    const said = saidIn(paper, which);
    const isOverhaul = paper.kind === 'overhaul';
    // An overhaul restarts one of the two; what it says of the other goes on from before, so it asks nothing.
    if (i === 0 || said === 'unknown' || (isOverhaul && which === 'sinceOverhaul')) return;
    const computed = sum(history, { which, at, asOf: paper.date });
    const takes = computed.tenths === 'unknown' && said >= computed.atLeastTenths;
    if (paper.kind === 'established' || takes) at = i;
    else if (computed.tenths !== said && !isOverhaul)
      doubts.push({ date: paper.date, which, saidTenths: said, computed, basis: paper.basis });
  });
  const paper = history.papers[at];
  const start = paper ? { date: paper.date, tenths: saidIn(paper, which), basis: paper.basis } : null;
  return { time: { ...sum(history, { which, at, asOf: history.asOf }), start }, doubts };
}

function saidIn(paper: Paper, which: Which): Tenths {
  return which === 'sinceNew' ? paper.sinceNewTenths : paper.sinceOverhaulTenths;
}

function sum(history: History, { which, at, asOf }: { which: Which; at: number; asOf: string }) {
  const paper = history.papers[at];
  const date = paper?.date ?? history.pieces[0]?.from ?? asOf;
  if (asOf < date) return { tenths: 'unknown' as const, atLeastTenths: 0, restartedOn: null, countedThrough: asOf };
  const overhauls = history.papers
    .filter((one, i) => i > at && one.kind === 'overhaul' && one.date <= asOf)
    .map((one) => one.date);
  const carried = paper
    ? { date, sinceNewTenths: paper.sinceNewTenths, sinceOverhaulTenths: paper.sinceOverhaulTenths }
    : { date, sinceNewTenths: 'unknown' as const, sinceOverhaulTenths: 'unknown' as const };
  const installations = history.pieces.flatMap((piece) => from(piece, date, history.readings));
  const answer: UnitTimes = unitsInTime({ asOf, carried, overhauls, installations, readings: history.readings });
  return {
    ...answer[which],
    restartedOn: which === 'sinceOverhaul' ? (overhauls.at(-1) ?? null) : null,
    countedThrough: answer.countedThrough,
  };
}

/** What of a piece lies after a day; before it, papers carry it. */
function from(piece: Piece, day: string, readings: readonly Reading[]): Installation[] {
  const { from, fromTenths, to, toTenths, meterNo } = piece;
  const meter = meterName({ ...piece, no: meterNo });
  if (from >= day) return [{ meter, from, fromTenths, to, toTenths }];
  if (to !== undefined && to <= day) return [];
  return [{ meter, from: day, fromTenths: figureOn(piece, day, readings), to, toTenths }];
}

function flownIn(piece: Piece, { asOf, readings }: History): Time {
  const carried = { date: piece.from, sinceNewTenths: 0, sinceOverhaulTenths: 0 };
  const installations = from(piece, piece.from, readings);
  return unitsInTime({ asOf, carried, overhauls: [], installations, readings }).sinceNew;
}

function isAfter({ from, to }: Piece, { start, restartedOn }: ExplainedTime): boolean {
  if (restartedOn !== null) return from >= restartedOn;
  return start === null || to === undefined || to > start.date || from >= start.date;
}
