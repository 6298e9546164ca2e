import { RuleError } from '../errors/index.ts';
import { fProbability } from './f-probability.ts';
import { gridOf, meanOf, rangeOf, type StudyCell, type StudyGrid, upTo } from './study-cells.ts';

/** Where the spread of a study comes from, as standard deviations in the readings' unit, and what that says of the gauge. */
export interface StudySpread {
  /** Of the gauge itself: the same appraiser, the same part. */
  readonly repeatability: number;
  /** Between appraisers, their interaction with parts included where it counts. */
  readonly reproducibility: number;
  readonly gauge: number;
  readonly parts: number;
  readonly total: number;
  /** Shares of the total spread in percent; standard deviations do not add up to a hundred. */
  readonly percent: {
    readonly repeatability: number;
    readonly reproducibility: number;
    readonly gauge: number;
    readonly parts: number;
  };
  /** 6 × gauge over the tolerance, in percent; only where a tolerance was given. */
  readonly percentOfTolerance?: number;
  /** How many sizes of part the gauge can tell apart; unknown where it sees no spread of its own. */
  readonly categories: number | 'unknown';
}

export interface AverageAndRange extends StudySpread {
  readonly meanRange: number;
  /** Ranges above this are not of the same process: D4 × mean range. */
  readonly rangeLimit: number;
  readonly appraisers: readonly { readonly appraiser: string; readonly mean: number; readonly meanRange: number }[];
}

export interface StudyAnova extends StudySpread {
  readonly table: readonly {
    readonly source: 'part' | 'appraiser' | 'interaction' | 'repeatability';
    readonly squares: number;
    readonly freedom: number;
    readonly meanSquare: number;
  }[];
  /** F of the interaction and how likely it is by chance. */
  readonly interaction: { readonly f: number; readonly probability: number; readonly pooled: boolean };
}

/** 1 / d2* for one subgroup of 2 … 10 (AIAG MSA, 4th ed., K2 and K3; from d2*, Duncan's table). */
// biome-ignore lint/suspicious/noApproximativeNumericConstant: rounded as the book rounds it, whose example it is held against
const oneSubgroup = [0.7071, 0.5231, 0.4467, 0.403, 0.3742, 0.3534, 0.3375, 0.3249, 0.3146];
/** 1 / d2 for 2 and 3 trials (AIAG MSA, 4th ed., K1), and D4 as that book tables it. */
const byTrials: Readonly<Record<number, { readonly k1: number; readonly d4: number }>> = {
  2: { k1: 0.8862, d4: 3.27 },
  3: { k1: 0.5908, d4: 2.58 },
};
/** An interaction less sure than this is counted as repeatability; common practice, no source. */
const poolAbove = 0.25;

/**
 * Repeatability and reproducibility by average and range. Two or three trials, up to ten appraisers and parts; above that the
 * tables end: use the analysis of variance. Source: AIAG MSA, 4th ed., chapter III.
 *
 * @throws RuleError as `gridOf`, and study-too-large, not-a-tolerance
 * @example the book's study of ten parts, three appraisers, three trials: gauge 0.3058, 26.7 % of the total, five categories
 */
export function averageAndRange(cells: readonly StudyCell[], tolerance?: number): AverageAndRange {
  const grid = gridOf(cells);
  const factors = byTrials[grid.trials];
  const [k2, k3] = [oneSubgroup[grid.appraisers.length - 2], oneSubgroup[grid.parts.length - 2]];
  if (!factors || k2 === undefined || k3 === undefined)
    throw new RuleError('study-too-large', 'The tables end at three trials, ten appraisers and ten parts', 'cells');
  const appraisers = grid.appraisers.map((appraiser, a) => {
    const own = upTo(grid.parts.length).map((p) => grid.at(a, p));
    return { appraiser, mean: meanOf(own.flat()), meanRange: meanOf(own.map(rangeOf)) };
  });
  const meanRange = meanOf(appraisers.map((one) => one.meanRange));
  const repeatability = meanRange * factors.k1;
  const between = rangeOf(appraisers.map(({ mean }) => mean)) * k2;
  const reproducibility = Math.sqrt(Math.max(0, between ** 2 - repeatability ** 2 / (grid.parts.length * grid.trials)));
  const parts =
    rangeOf(upTo(grid.parts.length).map((p) => meanOf(upTo(appraisers.length).flatMap((a) => grid.at(a, p))))) * k3;
  return {
    ...spread({ repeatability, reproducibility, parts }, tolerance),
    meanRange,
    rangeLimit: meanRange * factors.d4,
    appraisers,
  };
}

/**
 * The same by analysis of variance, crossed, appraisers and parts drawn at random; the interaction is pooled with repeatability
 * when chance explains it. Source: AIAG MSA, 4th ed., appendix A.
 *
 * @throws RuleError as `gridOf`, and not-a-tolerance
 */
export function studyAnova(cells: readonly StudyCell[], tolerance?: number): StudyAnova {
  const grid = gridOf(cells);
  const table = tableOf(grid);
  const [part, appraiser, interaction, repeat] = table;
  if (!part || !appraiser || !interaction || !repeat)
    throw new RuleError('study-too-small', 'Nothing to analyse', 'cells');
  const f = interaction.meanSquare / repeat.meanSquare;
  const probability = Number.isFinite(f) ? fProbability(f, interaction.freedom, repeat.freedom) : 0;
  const pooled = probability > poolAbove;
  const together = (interaction.squares + repeat.squares) / (interaction.freedom + repeat.freedom);
  const [within, beside] = pooled ? [together, together] : [repeat.meanSquare, interaction.meanSquare];
  const { length: a } = grid.appraisers;
  const { length: p } = grid.parts;
  const variance = (of: number) => Math.max(0, of);
  const ofInteraction = pooled ? 0 : variance((interaction.meanSquare - repeat.meanSquare) / grid.trials);
  const ofAppraiser = variance((appraiser.meanSquare - beside) / (p * grid.trials));
  const components = {
    repeatability: Math.sqrt(within),
    reproducibility: Math.sqrt(ofAppraiser + ofInteraction),
    parts: Math.sqrt(variance((part.meanSquare - beside) / (a * grid.trials))),
  };
  return { ...spread(components, tolerance), table, interaction: { f, probability, pooled } };
}

function tableOf({ appraisers, parts, trials, at }: StudyGrid): StudyAnova['table'] {
  const [as, ps] = [upTo(appraisers.length), upTo(parts.length)];
  const cell = (a: number, p: number) => meanOf(at(a, p));
  const grand = meanOf(as.flatMap((a) => ps.map((p) => cell(a, p))));
  const square = (values: readonly number[], times: number) =>
    values.reduce((sum, value) => sum + (value - grand) ** 2, 0) * times;
  const part = square(
    ps.map((p) => meanOf(as.map((a) => cell(a, p)))),
    as.length * trials,
  );
  const appraiser = square(
    as.map((a) => meanOf(ps.map((p) => cell(a, p)))),
    ps.length * trials,
  );
  const cells = square(
    as.flatMap((a) => ps.map((p) => cell(a, p))),
    trials,
  );
  const within = as
    .flatMap((a) => ps.map((p) => at(a, p).reduce((sum, value) => sum + (value - cell(a, p)) ** 2, 0)))
    .reduce((sum, one) => sum + one, 0);
  const line = (source: StudyAnova['table'][number]['source'], squares: number, freedom: number) => ({
    ...{ source, squares, freedom },
    meanSquare: squares / freedom,
  });
  return [
    line('part', part, ps.length - 1),
    line('appraiser', appraiser, as.length - 1),
    line('interaction', Math.max(0, cells - part - appraiser), (ps.length - 1) * (as.length - 1)),
    line('repeatability', within, ps.length * as.length * (trials - 1)),
  ];
}

function spread(
  { repeatability, reproducibility, parts }: Pick<StudySpread, 'repeatability' | 'reproducibility' | 'parts'>,
  tolerance: number | undefined,
): StudySpread {
  if (tolerance !== undefined && !(Number.isFinite(tolerance) && tolerance > 0))
    throw new RuleError('not-a-tolerance', 'A tolerance is more than 0', 'tolerance');
  const gauge = Math.hypot(repeatability, reproducibility);
  const total = Math.hypot(gauge, parts);
  const share = (of: number) => (total === 0 ? 0 : (of / total) * 100);
  return {
    ...{ repeatability, reproducibility, gauge, parts, total },
    percent: {
      repeatability: share(repeatability),
      reproducibility: share(reproducibility),
      gauge: share(gauge),
      parts: share(parts),
    },
    ...(tolerance === undefined ? {} : { percentOfTolerance: ((6 * gauge) / tolerance) * 100 }),
    // A gauge that shows no spread has too coarse a scale to say: that is unknown, not infinitely good.
    categories: gauge === 0 ? 'unknown' : Math.max(1, Math.floor((1.41 * parts) / gauge)),
  };
}
