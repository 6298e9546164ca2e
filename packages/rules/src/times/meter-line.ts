import { daysBetween } from '../dates/index.ts';

/** What a meter showed on a day; `no` tells replaced meters apart. `isNew`: it is being said now, the others are on record. */
export type MeterPoint = { on: string; tenths: number; no: number; what: string; isNew: boolean };

export type OutOfLine = { fault: 'backwards' | 'too-fast'; said: MeterPoint; earlier: MeterPoint; later: MeterPoint };

/** 24 hours in tenths; and as many cycles, since one takes six minutes at least (chosen, no source). */
const mostADay = 240;

/**
 * The first pair of figures that one meter cannot have shown, or undefined: a meter only goes up, and by no more than 24 hours,
 * or 240 cycles, a day. Only what is said now is judged, against everything on record; figures of one day may stand in any order.
 *
 * Source: arithmetic.
 *
 * @example 100.0 h on 1 March on record, 99.0 h said for 2 March: backwards
 */
export function outOfLine(points: readonly MeterPoint[]): OutOfLine | undefined {
  for (const said of points.filter(({ isNew }) => isNew)) {
    const others = points.filter((point) => point !== said && point.no === said.no);
    const before = others.filter(({ on }) => on <= said.on).sort((a, b) => b.tenths - a.tenths);
    const after = others.filter(({ on }) => on >= said.on).sort((a, b) => a.tenths - b.tenths);
    const higher = before.find(({ on, tenths }) => on < said.on && tenths > said.tenths);
    if (higher) return { fault: 'backwards', said, earlier: higher, later: said };
    const lower = after.find(({ on, tenths }) => on > said.on && tenths < said.tenths);
    if (lower) return { fault: 'backwards', said, earlier: said, later: lower };
    const slow = others.find((other) => Math.abs(other.tenths - said.tenths) > most(other.on, said.on));
    if (slow)
      return {
        fault: 'too-fast',
        said,
        ...(slow.on <= said.on ? { earlier: slow, later: said } : { earlier: said, later: slow }),
      };
  }
  return undefined;
}

function most(a: string, b: string): number {
  return (Math.abs(daysBetween(a, b)) + 1) * mostADay;
}
