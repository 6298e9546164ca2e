import { RuleError } from '../errors/index.ts';

/** What a part may reach since new before it is retired: hours in tenths, cycles, overhauls, or several of them. */
export interface LifeLimit {
  readonly hoursTenths?: number;
  readonly cycles?: number;
  readonly overhauls?: number;
}

/** What a part has since new. */
export interface LifeUsed {
  readonly hoursTenths: number | 'unknown';
  readonly cycles: number | 'unknown';
  readonly overhauls?: number | 'unknown';
  /** Of hours and cycles whose total is not known, what is known at least: at the limit already, it is used up whatever the rest. */
  readonly atLeast?: { readonly hoursTenths?: number; readonly cycles?: number };
  /** Of overhauls that nobody counted from new, those that are on record: more than the limit of them is over it whatever came before. */
  readonly overhaulsAtLeast?: number;
}

export interface LifeVerdict {
  /** Only a part within every one of its limits may go back into service. */
  readonly state: 'within' | 'unknown' | 'reached';
  /** The measures that are at or over their limit, or not known. */
  readonly by: readonly (keyof LifeLimit)[];
  /** What is left of each limit whose use is known; never below zero. */
  readonly left: LifeLimit;
}

const measures = ['hoursTenths', 'cycles', 'overhauls'] as const;

/**
 * Whether a life-limited part may still be used. At its limit a part is used up: the limit is where it is retired. A total that
 * nobody knows is never taken for a low one, and a limit that is reached tells more than another that is not known. Overhauls are
 * counted otherwise: limited to five, a part serves out the time after its fifth and is never given a sixth, so it is used up at more than five.
 * 14 CFR 43.10 and 91.417(a)(2)(ii) name the current status of life-limited parts; that equal means reached is common practice.
 *
 * Throws `RuleError` without any limit, or on a number that is not a whole one of at least zero (limits: one).
 *
 * @example lifeVerdict({ hoursTenths: 85_000 }, { hoursTenths: 85_010, cycles: 'unknown' })
 * // { state: 'reached', by: ['hoursTenths'], left: { hoursTenths: 0 } }
 */
export function lifeVerdict(limit: LifeLimit, used: LifeUsed): LifeVerdict {
  const limited = measures.filter((measure) => limit[measure] !== undefined);
  if (limited.length === 0) throw new RuleError('no-limit', 'A life limit names hours, cycles or overhauls', 'limit');
  for (const measure of limited) {
    refuseFraction(limit[measure], 1, `limit.${measure}`);
    const total = usedOf(used, measure);
    if (total !== 'unknown') refuseFraction(total, 0, `used.${measure}`);
  }
  const leftOf = (measure: keyof LifeLimit) => {
    const total = usedOf(used, measure);
    return total === 'unknown' ? undefined : Math.max(0, (limit[measure] ?? 0) - total);
  };
  const reached = limited.filter((measure) => isReached(measure, limit[measure] ?? 0, used));
  const unknown = limited.filter((measure) => leftOf(measure) === undefined && !reached.includes(measure));
  const left = Object.fromEntries(
    limited.flatMap((measure) => {
      const some = leftOf(measure);
      return some === undefined ? [] : [[measure, some]];
    }),
  );
  if (reached.length > 0) return { state: 'reached', by: reached, left };
  return { state: unknown.length > 0 ? 'unknown' : 'within', by: unknown, left };
}

function usedOf(used: LifeUsed, measure: keyof LifeLimit): number | 'unknown' {
  return used[measure] ?? 'unknown';
}

function isReached(measure: keyof LifeLimit, limit: number, used: LifeUsed): boolean {
  const total = usedOf(used, measure);
  if (measure !== 'overhauls') return (total === 'unknown' ? (used.atLeast?.[measure] ?? 0) : total) >= limit;
  return (total === 'unknown' ? (used.overhaulsAtLeast ?? 0) : total) > limit;
}

function refuseFraction(value: number | undefined, least: number, path: string): void {
  if (Number.isSafeInteger(value) && (value ?? -1) >= least) return;
  throw new RuleError('not-whole', `This is a whole number of at least ${least}`, path);
}
