import type { Reading, Tenths } from './times-input.ts';

/** An assembly sat on an aircraft. `toTenths` is there whenever `to` is. */
export type OnAircraft = {
  id: string;
  aircraftId: string;
  meter: string;
  from: string;
  fromTenths: Tenths;
  to?: string | undefined;
  toTenths?: Tenths | undefined;
};

/** A meter of an aircraft was replaced: what the old one showed last and the new one first. */
export type MeterChange = { aircraftId: string; meter: string; on: string; oldTenths: Tenths; newTenths: Tenths };

/** `no` tells the meters of one kind on one aircraft apart: 1 is the first, each change begins the next. */
export type MeterReading = { aircraftId: string; meter: string; no: number; date: string; tenths: number };

/** An assembly was out of the shop, from the day it left to the day it came back. */
export type Away = { from: string; to?: string | undefined };

/**
 * A part sat in an assembly. `endsUnseen`: it was found gone when the assembly came in, so nobody knows when after the assembly
 * last left it was taken out.
 */
export type InAssembly = { from: string; to?: string | undefined; endsUnseen: boolean };

/** A stretch of flying on one meter; `meterNo` 0 means that no installation was reported at all. */
export type Piece = Omit<OnAircraft, 'id' | 'aircraftId'> & {
  intervalId: string | null;
  aircraftId: string | null;
  meterNo: number;
};

/** The one name under which readings and pieces of the same meter meet. */
export function meterName({
  aircraftId,
  meter,
  no,
}: Pick<MeterReading, 'meter' | 'no'> & { aircraftId: string | null }) {
  return no === 0 || aircraftId === null ? 'not reported' : `${aircraftId} ${meter} ${no}`;
}

/**
 * Where an assembly flew, meter by meter: an interval that a replaced meter falls into is two. Time out of the shop in which
 * no installation begins or goes on is a piece of its own with nothing known: silence is not zero hours.
 *
 * On the day of a change an installation is read on the new meter and a removal on the old. Source: common practice, no source.
 */
export function piecesOfAssembly(given: {
  intervals: readonly OnAircraft[];
  changes: readonly MeterChange[];
  away: readonly Away[];
}): Piece[] {
  const { intervals, changes, away } = given;
  const silent = away.filter(
    (one) => !intervals.some(({ from, to }) => (one.to === undefined || from < one.to) && (to ?? '~') > one.from),
  );
  const pieces = [
    ...intervals.flatMap((interval) => byMeter(interval, changes)),
    ...silent.map(({ from, to }) => nothingKnown({ from, to })),
  ];
  return pieces.sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : (a.to ?? '~') < (b.to ?? '~') ? -1 : 1));
}

function nothingKnown({ from, to }: Away): Piece {
  const end = to === undefined ? {} : { to, toTenths: 'unknown' as const };
  return { intervalId: null, aircraftId: null, meter: '', meterNo: 0, from, fromTenths: 'unknown', ...end };
}

function byMeter({ id, ...interval }: OnAircraft, changes: readonly MeterChange[]): Piece[] {
  const own = changes
    .filter((change) => change.aircraftId === interval.aircraftId && change.meter === interval.meter)
    .sort((a, b) => (a.on < b.on ? -1 : 1));
  const before = own.filter(({ on }) => on <= interval.from).length;
  const inside = own.filter(({ on }) => on > interval.from && (interval.to === undefined || on < interval.to));
  return [...inside, undefined].map((change, i) => {
    const last = inside[i - 1];
    const start = last ? { from: last.on, fromTenths: last.newTenths } : {};
    const end = change ? { to: change.on, toTenths: change.oldTenths } : {};
    return { ...interval, ...start, ...end, intervalId: id, meterNo: before + i + 1 };
  });
}

/**
 * Where a part flew: the assembly's pieces while it sat in the assembly. A day inside of a piece on which it came or went has
 * no figure of its own, so that end is unknown and the readings after or before it give the lower bound.
 */
export function piecesOfPart(sat: InAssembly, assembly: { pieces: readonly Piece[]; away: readonly Away[] }): Piece[] {
  const seen = sat.endsUnseen ? lastLeft(sat, assembly.away) : undefined;
  return assembly.pieces.flatMap((piece) => {
    const cut = cutTo(piece, sat);
    if (cut === undefined) return [];
    return seen !== undefined && cut.from >= seen ? [nothingKnown({ from: cut.from, to: cut.to })] : [cut];
  });
}

function lastLeft({ from, to }: InAssembly, away: readonly Away[]): string {
  return (
    away
      .map((one) => one.from)
      .filter((day) => day >= from && (to === undefined || day <= to))
      .sort()
      .at(-1) ?? from
  );
}

function cutTo(piece: Piece, { from, to }: Away): Piece | undefined {
  const end = piece.to ?? '~';
  const whole = from <= piece.from && (to ?? '~') >= end;
  if (whole) return piece;
  if (end <= from || (to !== undefined && piece.from >= to)) return undefined;
  const start = piece.from < from ? { from, fromTenths: 'unknown' as const } : {};
  const cut = to !== undefined && end > to ? { to, toTenths: 'unknown' as const } : {};
  return { ...piece, ...start, ...cut };
}

/** What the piece's meter showed on a day, where the readings leave no doubt: one reading that day, or none moved around it. */
export function figureOn(piece: Piece, day: string, readings: readonly Reading[]): Tenths {
  const name = meterName({ ...piece, no: piece.meterNo });
  const own = readings.filter(({ meter }) => meter === name);
  const that = new Set(own.filter(({ date }) => date === day).map(({ tenths }) => tenths));
  if (that.size > 0) return that.size === 1 ? [...that][0]! : 'unknown';
  const start = typeof piece.fromTenths === 'number' ? [piece.fromTenths] : [];
  const before = Math.max(...own.filter(({ date }) => date < day).map(({ tenths }) => tenths), ...start, -1);
  const after = Math.min(...own.filter(({ date }) => date > day).map(({ tenths }) => tenths));
  return before >= 0 && before === after ? before : 'unknown';
}
