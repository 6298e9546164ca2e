import { type Form, LEAST_C, rise, type Shape, slopes } from './forms.ts';
import { inverse } from './matrix.ts';

export type Point = { time: number; arcHeight: number };
export type Curve = Shape & { a: number };
export type Fit = Curve & {
  rss: number;
  /** The best b or c lies at the edge of what was searched: the readings do not determine it. */
  edge: 'none' | 'never levels off' | 'level from the start';
};

/** b·t in every reading between a straight line and a plateau, whatever the units: searched, not started from a guess. */
const LINEAR = 1e-3;
const LEVEL = 50;
const STEPS = 60;
const C_RANGE = [LEAST_C + 0.01, 4] as const;
const C_STEPS = 24;
/** Sum of squares, heights scaled to 1, that is rounding and not a worse fit. */
const NO_DIFFERENCE = 1e-20;
/** More than forty sums of heights scaled to 1 can be off by. */
const ROUNDING = 1e-12;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The curve of least squares. The amplitude follows from the shape (a = Σyg / Σg²), so only the shape is searched, over
 * its whole range: descent from a starting point can end on a false plateau where b no longer matters and a is the mean
 * of the readings. Times are scaled by the longest; Gauss–Newton gives the last digits.
 */
export function fitCurve(points: Point[], form: Form): Fit {
  const longest = Math.max(...points.map(({ time }) => time));
  const highest = Math.max(...points.map(({ arcHeight }) => Math.abs(arcHeight)));
  const scaled = points.map(({ time, arcHeight }) => ({ time: time / longest, arcHeight: arcHeight / highest }));
  const shortest = Math.min(...scaled.map(({ time }) => time));
  // Curves of like c have their best b at a like step: looked at first, it shows most others to be hopeless.
  const first = { step: 0 };
  const bestB = (c: number) => {
    const [from, to] = form === 'rational' ? [shortest / LEVEL, 1 / LINEAR] : [LINEAR, LEVEL / shortest ** c];
    const left = leftAt(scaled, form, c);
    const b = Math.exp(
      minimum((logB, most) => left(Math.exp(logB), most), [Math.log(from), Math.log(to)], { steps: STEPS, first }),
    );
    return { shape: { b, c }, left, from, to };
  };
  const c =
    form === 'stretched'
      ? minimum(
          (tried) => {
            const { left, shape } = bestB(tried);
            return left(shape.b);
          },
          [...C_RANGE],
          { steps: C_STEPS, first: { step: 0 } },
        )
      : 1;
  const { shape, left, from, to } = bestB(c);
  const alike = (b: number) => left(b) <= left(shape.b) * (1 + 1e-9) + NO_DIFFERENCE;
  const edge = edgeOf(form, c, {
    atLow: shape.b < from * 1.001 || alike(from),
    atHigh: shape.b > to / 1.001 || alike(to),
  });
  const curve = { a: amplitude(scaled, form, shape), ...shape };
  const { a, ...best } = edge === 'none' ? polish(scaled, form, curve) : curve;
  const b = form === 'rational' ? best.b * longest : best.b / longest ** best.c;
  const fitted = { a: a * highest, b, c: best.c };
  return { ...fitted, rss: sumOfSquares(points, form, fitted), edge };
}

export function valueAt(form: Form, { a, ...shape }: Curve, time: number): number {
  return a * rise(form, shape, time);
}

/** JᵀJ of the curve by a, b and, for the stretched form, c. */
export function normalMatrix(points: Point[], form: Form, { a, ...shape }: Curve): number[][] {
  const rows = points.map(({ time }) => [
    rise(form, shape, time),
    ...slopes(form, shape, time).map((slope) => a * slope),
  ]);
  return rows[0]!.map((_, i) => rows[0]!.map((_unused, j) => rows.reduce((sum, row) => sum + row[i]! * row[j]!, 0)));
}

function amplitude(points: Point[], form: Form, shape: Shape): number {
  let products = 0;
  let squares = 0;
  for (const { time, arcHeight } of points) {
    const g = rise(form, shape, time);
    products += arcHeight * g;
    squares += g * g;
  }
  return products / squares;
}

/**
 * The sum of squares that the best amplitude leaves, as a function of b. It is asked for thousands of b at each c: what does not
 * depend on b is computed once, and what is worse than `most` already with its first readings is Infinity: no amplitude fits all of
 * them better than the best one fits those.
 */
function leftAt(points: Point[], form: Form, c: number): (b: number, most?: number) => number {
  const powers = Float64Array.from(points, ({ time }) => (form === 'rational' ? time : time ** c));
  const heights = Float64Array.from(points, ({ arcHeight }) => arcHeight);
  const g = new Float64Array(points.length);
  let whole = 0;
  const before = heights.map((height) => {
    whole += height * height;
    return whole;
  });
  return (b, most = Number.POSITIVE_INFINITY) => {
    const hopeless = most * (1 + 1e-9) + ROUNDING;
    let products = 0;
    let squares = 0;
    for (let i = 0; i < g.length; i += 1) {
      const power = powers[i]!;
      const risen = form === 'rational' ? power / (b + power) : -Math.expm1(-b * power);
      g[i] = risen;
      products += heights[i]! * risen;
      squares += risen * risen;
      if (i % 4 === 3 && before[i]! - (products * products) / squares > hopeless) return Number.POSITIVE_INFINITY;
    }
    const a = products / squares;
    let sum = 0;
    for (let i = 0; i < g.length; i += 1) {
      const residual = heights[i]! - a * g[i]!;
      sum += residual * residual;
    }
    return sum;
  };
}

function sumOfSquares(points: Point[], form: Form, curve: Curve): number {
  return points.reduce((sum, { time, arcHeight }) => sum + (arcHeight - valueAt(form, curve, time)) ** 2, 0);
}

/**
 * Best of an even scan, then golden section around it, to some six digits: the polish gives the rest. `f` may answer Infinity for what is
 * above `most`: of two values the higher is never asked for again. The scan begins at the step in `first`, and leaves the best there.
 */
function minimum(
  f: (x: number, most: number) => number,
  [from, to]: [number, number],
  { steps, first }: { steps: number; first: { step: number } },
): number {
  const at = (i: number) => from + ((to - from) * i) / steps;
  let least = f(at(first.step), Number.POSITIVE_INFINITY);
  const values = Array.from({ length: steps + 1 }, () => least);
  for (let i = 0; i <= steps; i += 1) {
    if (i === first.step) continue;
    values[i] = f(at(i), least);
    least = Math.min(least, values[i]!);
  }
  const best = values.indexOf(least);
  first.step = Math.max(0, best);
  let [low, high] = [at(Math.max(0, best - 1)), at(Math.min(steps, best + 1))];
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let atLeft = f(left, Number.POSITIVE_INFINITY);
  let atRight = f(right, atLeft);
  for (let i = 0; i < 30; i += 1) {
    if (atLeft <= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = f(left, atRight);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = f(right, atLeft);
    }
  }
  return (low + high) / 2;
}

function edgeOf(form: Form, c: number, { atLow, atHigh }: { atLow: boolean; atHigh: boolean }): Fit['edge'] {
  const [straight, level] = form === 'rational' ? [atHigh, atLow] : [atLow, atHigh];
  if (level || (form === 'stretched' && c > C_RANGE[1] / 1.001)) return 'level from the start';
  return straight || (form === 'stretched' && c < C_RANGE[0] * 1.001) ? 'never levels off' : 'none';
}

/** Gauss–Newton, each step kept only when it does not raise the sum of squares. */
function polish(points: Point[], form: Form, start: Curve): Curve {
  let curve = start;
  for (let i = 0; i < 20; i += 1) {
    const covariance = inverse(normalMatrix(points, form, curve));
    if (covariance === undefined) return curve;
    const { a, ...shape } = curve;
    const gradient = covariance.map(() => 0);
    for (const { time, arcHeight } of points) {
      const residual = arcHeight - valueAt(form, curve, time);
      const row = [rise(form, shape, time), ...slopes(form, shape, time).map((slope) => a * slope)];
      row.forEach((value, j) => {
        gradient[j]! += value * residual;
      });
    }
    const [stepA, stepB, stepC = 0] = covariance.map((row) =>
      row.reduce((sum, value, j) => sum + value * gradient[j]!, 0),
    );
    const next = { a: a + stepA!, b: shape.b + stepB!, c: shape.c + stepC };
    if (next.b <= 0 || next.c <= LEAST_C) return curve;
    // Where a step changes nothing any more, no later one does.
    if (next.a === a && next.b === shape.b && next.c === shape.c) return curve;
    // A step within rounding of the minimum may raise the sum in its last digit and still be the better parameter.
    if (sumOfSquares(points, form, next) > sumOfSquares(points, form, curve) * (1 + 1e-12)) return curve;
    curve = next;
  }
  return curve;
}
