import { RuleError } from '../errors/index.ts';

export type Strip = 'N' | 'A' | 'C';
export type LengthUnit = 'in' | 'mm';

/**
 * How far from flat a strip may be before it is peened. From memory of SAE J442, table 1 (N and A 0.001 in, C 0.0015 in), not
 * confirmed: the strip maker's certificate and the process specification in use govern.
 */
const mostPreBow: Record<Strip, Record<LengthUnit, number>> = {
  N: { in: 0.001, mm: 0.025 },
  A: { in: 0.001, mm: 0.025 },
  C: { in: 0.0015, mm: 0.038 },
};

/**
 * Net arc height of a strip: what the gauge shows after peening less what it showed before (SAE J443), to the finer of both
 * readings' decimals. Decimal text in one unit.
 *
 * @throws RuleError not-finite; pre-bowed when the strip was not flat enough to be used
 * @example before 0.0002, after 0.0099 → 0.0097
 */
export function netArcHeight(readings: { strip: Strip; unit: LengthUnit; before: string; after: string }): string {
  const { strip, unit, before, after } = readings;
  for (const [path, text] of Object.entries({ before, after }))
    if (text.trim() === '' || !Number.isFinite(Number(text)))
      throw new RuleError('not-finite', 'A reading is a number.', path);
  const most = mostPreBow[strip][unit];
  if (Math.abs(Number(before)) > most + 1e-12)
    throw new RuleError('pre-bowed', `Bowed by ${before} ${unit} before peening; ${most} is the most.`, 'before');
  const decimals = Math.max(...[before, after].map((text) => text.split('.')[1]?.length ?? 0));
  return (Number(after) - Number(before)).toFixed(decimals);
}

/** How many times the arc height of the stiffer strip the thinner one shows. Source: AMS-S-13165, 6.10: approximate. */
const A_OVER_C = 3.5;
const N_OVER_A = 3;
/** From here on a C strip, below this an N strip is to be used (AMS-S-13165, 6.10 and Table VI, note 3; SAE J443:1984 has 0.006). */
const rangeOfA: Record<LengthUnit, { low: number; high: number }> = {
  in: { low: 0.004, high: 0.024 },
  mm: { low: 0.004 * 25.4, high: 0.024 * 25.4 },
};

export type Guidance = {
  about: { strip: Strip; arcHeight: number }[];
  /** The strip to use at such an intensity, where that is another one. */
  use?: Strip;
};

/**
 * About what the same intensity would show on the other strips, and whether one of them is the one to use. Only from one strip to
 * its neighbour: two approximations on top of each other say nothing.
 * Guidance only: never a reading, and never what a lot, a set-up or a part is judged by. Intensity is measured with the strip that
 * is asked for. Source: AMS-S-13165, 6.10 (A reads about 3.5 times C, N about 3 times A; for nominal designations).
 *
 * @throws RuleError not-finite for an arc height that is no number above 0
 * @example 0.0105 in on A → about 0.0030 on C and 0.0315 on N
 */
export function onOtherStrips(strip: Strip, arcHeight: number, unit: LengthUnit): Guidance {
  if (!Number.isFinite(arcHeight) || arcHeight <= 0)
    throw new RuleError('not-finite', 'An arc height is a number above 0.', 'arcHeight');
  const { low, high } = rangeOfA[unit];
  const onA = { N: arcHeight / N_OVER_A, A: arcHeight, C: arcHeight * A_OVER_C }[strip];
  const right: Strip = onA < low ? 'N' : onA > high ? 'C' : 'A';
  const about: Guidance['about'] =
    strip === 'A'
      ? [
          { strip: 'N', arcHeight: arcHeight * N_OVER_A },
          { strip: 'C', arcHeight: arcHeight / A_OVER_C },
        ]
      : [{ strip: 'A', arcHeight: onA }];
  return right === strip ? { about } : { about, use: right };
}
