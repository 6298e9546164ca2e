import { RuleError } from '../errors/index.ts';

/** What a part may reach since new before it is retired: hours in tenths, cycles, or both. */
export interface LifeLimit {
  readonly hoursTenths?: number;
  readonly cycles?: number;
}

/** What a part has since new. */
export interface LifeUsed {
  readonly hoursTenths: number | 'unknown';
  readonly cycles: number | 'unknown';
}

export interface LifeVerdict {
  /** Only a part within every one of its limits may go back into service. */
  readonly state: 'within' | 'unknown' | 'reached';
  /** The measures that are at or over their limit, or not known. */
  readonly by: readonly (keyof LifeLimit)[];
  /** What is left of each limit whose use is known; never below zero. */
  readonly left: LifeLimit;
}

const measures = ['hoursTenths', 'cycles'] as const;

/**
 * Whether a life-limited part may still be used. At its limit a part is used up: the limit is where it is retired. A total that
 * nobody knows is never taken for a low one, and a limit that is reached tells more than another that is not known.
 * 14 CFR 43.10 and 91.417(a)(2)(ii) name the current status of life-limited parts; that equal means reached is common practice.
 *
 * Throws `RuleError` without any limit, or on a number that is not a whole one of at least zero (limits: one).
 *
 * @example lifeVerdict({ hoursTenths: 85_000 }, { hoursTenths: 85_010, cycles: 'unknown' })
 * // { state: 'reached', by: ['hoursTenths'], left: { hoursTenths: 0 } }
 */
export function lifeVerdict(limit: LifeLimit, used: LifeUsed): LifeVerdict {
  const limited = measures.filter((measure) => limit[measure] !== undefined);
  if (limited.length === 0) throw new RuleError('no-limit', 'A life limit names hours, cycles or both', 'limit');
  for (const measure of limited) {
    refuseFraction(limit[measure], 1, `limit.${measure}`);
    if (used[measure] !== 'unknown') refuseFraction(used[measure], 0, `used.${measure}`);
  }
  const leftOf = (measure: keyof LifeLimit) => {
    const total = used[measure];
    return total === 'unknown' ? undefined : Math.max(0, (limit[measure] ?? 0) - total);
  };
  const reached = limited.filter((measure) => leftOf(measure) === 0);
  const unknown = limited.filter((measure) => leftOf(measure) === undefined);
  const left = Object.fromEntries(
    limited.flatMap((measure) => {
      const some = leftOf(measure);
      return some === undefined ? [] : [[measure, some]];
    }),
  );
  if (reached.length > 0) return { state: 'reached', by: reached, left };
  return { state: unknown.length > 0 ? 'unknown' : 'within', by: unknown, left };
}

function refuseFraction(value: number | undefined, least: number, path: string): void {
  if (Number.isSafeInteger(value) && (value ?? -1) >= least) return;
  throw new RuleError('not-whole', `This is a whole number of at least ${least}`, path);
}
