import type { NextDueInput } from '@hubwright/rules/due';
import type { Time } from '@hubwright/rules/times';
import type { DueFacts } from './due-of-unit.ts';
import type { Flying } from './flying.ts';

/** A unit's flying as the projection takes it: hours, not tenths. */
export interface Flown {
  readonly hours: number | 'unknown';
  readonly installed?: string;
  readonly flownBefore?: number;
  readonly carriedOver: true;
  readonly readings: readonly { readonly date: string; readonly hours: number }[];
  readonly use: NextDueInput['use'];
  /** Only what is known to have been flown went in: it may be due earlier. */
  readonly isAtLeast: boolean;
  /** Hours are those of a meter that somebody can read. */
  readonly hasMeter: boolean;
  readonly words: readonly string[];
}

type Of<Kind extends Flying['kind']> = Extract<Flying, { kind: Kind }>;

const monthDays = 365.25 / 12;
const plain = { carriedOver: true, isAtLeast: false, hasMeter: true, words: [] } as const;

export function asFlown({ flying, hoursPerMonth, asOf }: Pick<DueFacts, 'flying' | 'hoursPerMonth' | 'asOf'>): Flown {
  const use = hoursPerMonth === undefined ? undefined : { perDay: hoursPerMonth / monthDays };
  switch (flying.kind) {
    case 'on':
      return onAircraft(flying, use);
    case 'off':
      return offAircraft(flying, use, asOf);
    case 'supposed':
      return supposed(flying, use);
    case 'contradictory':
      return {
        ...{ ...plain, hours: 'unknown', readings: [], use },
        words: [`Meter readings left out: ${flying.why}`],
      };
  }
}

function onAircraft(flying: Of<'on'>, use: Flown['use']): Flown {
  const { from, sinceOverhaul, registration } = flying;
  const readings = inHours(flying.points);
  const own = flying.points.filter(({ date, tenths }) => date > from || (date === from && isFrom(tenths, flying)));
  const start = flying.fromTenths === 'unknown' ? own[0]?.tenths : flying.fromTenths;
  const where = `On ${registration} since ${from}.`;
  if (start === undefined)
    return { ...plain, hours: 'unknown', readings, use, words: [where, 'What its meter showed then is not known.'] };
  const isAtLeast = sinceOverhaul.tenths === 'unknown';
  const now = own.at(-1)?.tenths ?? start;
  return {
    ...{ ...plain, readings, use, isAtLeast, hours: start / 10 },
    // Without a figure at installation the first reading is where what is known begins.
    installed: flying.fromTenths === 'unknown' ? (own[0]?.date ?? from) : from,
    flownBefore: (sinceOverhaul.atLeastTenths - (now - start)) / 10,
    words: [where, ...boundWords(sinceOverhaul)],
  };
}

function isFrom(tenths: number, { fromTenths }: Of<'on'>): boolean {
  return typeof fromTenths === 'number' && tenths >= fromTenths;
}

/** Its hours stand still, so the axis is its own time since overhaul. */
function offAircraft({ since, registration, sinceOverhaul }: Of<'off'>, use: Flown['use'], asOf: string): Flown {
  const hours = sinceOverhaul.atLeastTenths / 10;
  const date = use ? asOf : since;
  return {
    ...{ ...plain, hours, installed: date, flownBefore: hours, readings: [{ date, hours }], hasMeter: false },
    use: use ?? { why: `it is off ${registration} since ${since}, so its hours stand still` },
    isAtLeast: sinceOverhaul.tenths === 'unknown',
    words: boundWords(sinceOverhaul),
  };
}

function supposed({ registration, fromTenths, points }: Of<'supposed'>, use: Flown['use']): Flown {
  return {
    ...{ ...plain, readings: inHours(points), use },
    hours: fromTenths === 'unknown' ? fromTenths : fromTenths / 10,
    words: registration
      ? [`Nobody reported an installation since: it is taken to fly on ${registration}, from where it came.`]
      : [],
  };
}

function boundWords({ tenths, atLeastTenths }: Time): string[] {
  if (tenths !== 'unknown') return [];
  const known = (atLeastTenths / 10).toFixed(1);
  return [`Its hours since overhaul are known as at least ${known} h only, so by hours it may be due earlier.`];
}

function inHours(points: readonly { date: string; tenths: number }[]) {
  return points.map(({ date, tenths }) => ({ date, hours: tenths / 10 }));
}
