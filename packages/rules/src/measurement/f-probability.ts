import { RuleError } from '../errors/index.ts';

/**
 * How likely an F as large as this or larger is by chance, with these degrees of freedom: the upper tail of the F distribution
 * by the regularised incomplete beta function (NIST DLMF 8.17). Throws `not-an-f`.
 *
 * @example fProbability(4.9646, 1, 10) // 0.05
 */
export function fProbability(f: number, above: number, below: number): number {
  if (!(f >= 0 && above > 0 && below > 0))
    throw new RuleError('not-an-f', 'F and its degrees of freedom are positive', 'f');
  return regularisedBeta(below / (below + above * f), below / 2, above / 2);
}

/** I_x(a, b), DLMF 8.17.22; the symmetry 8.17.4 keeps the continued fraction where it converges fast. */
function regularisedBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - regularisedBeta(1 - x, b, a);
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta(a, b)) / a;
  return front * fraction(x, a, b);
}

/** Lentz's method: terms until they change nothing any more. */
function fraction(x: number, a: number, b: number): number {
  const away = (value: number) => (Math.abs(value) < 1e-300 ? 1e-300 : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let result = d;
  for (let m = 1; m <= 500; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    for (const term of [even, odd]) {
      d = 1 / away(1 + term * d);
      c = away(1 + term / c);
      result *= c * d;
    }
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return result;
}

function logBeta(a: number, b: number): number {
  return logGamma(a) + logGamma(b) - logGamma(a + b);
}

/** Stirling's series (DLMF 5.11.1) after moving up to where it is exact to double precision. */
function logGamma(given: number): number {
  let shift = 0;
  let z = given;
  for (; z < 12; z += 1) shift -= Math.log(z);
  const r = 1 / z;
  const series = r / 12 - r ** 3 / 360 + r ** 5 / 1260 - r ** 7 / 1680 + r ** 9 / 1188;
  return shift + (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series;
}
