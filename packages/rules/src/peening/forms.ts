/** a(1−e^(−bt)) | a·t/(b+t) | a(1−e^(−b·t^c)) */
export type Form = 'exponential' | 'rational' | 'stretched';

/** What follows a in a curve a·g(t): b, and c for the stretched form (1 otherwise). */
export type Shape = { b: number; c: number };

/** Doubling the exposure at T adds a tenth (SAE J443): h(2T) = 1.1·h(T). */
const RISE = 1.1;

/** Below this c a stretched curve rises by more than a tenth at every doubling: 2^c = 1.1. */
export const LEAST_C = Math.log2(RISE);

export function rise(form: Form, { b, c }: Shape, time: number): number {
  return form === 'rational' ? time / (b + time) : -Math.expm1(-b * time ** c);
}

/** Derivatives of g by b and, for the stretched form, by c. */
export function slopes(form: Form, { b, c }: Shape, time: number): number[] {
  if (form === 'rational') return [-time / (b + time) ** 2];
  const power = time ** c;
  const byB = power * Math.exp(-b * power);
  return form === 'exponential' ? [byB] : [byB, b * Math.log(time) * byB];
}

/**
 * T in closed form but for the stretched curve. With u = e^(−b·T^c): exponential u = 0.1, so T = ln 10 / b; rational
 * 2(b + T) = 1.1(b + 2T), so T = 4.5 b; stretched 1 − u^(2^c) = 1.1(1 − u), the root below 1.
 */
export function saturationTime(form: Form, { b, c }: Shape): number {
  if (form === 'rational') return 4.5 * b;
  if (form === 'exponential') return Math.LN10 / b;
  return (-Math.log(unpeenedAtSaturation(2 ** c)) / b) ** (1 / c);
}

function unpeenedAtSaturation(k: number): number {
  const excess = (u: number) => RISE * (1 - u) - (1 - u ** k);
  // Between 0 and its lowest point the excess falls through 0 once.
  let low = 0;
  let high = (RISE / k) ** (1 / (k - 1));
  for (let i = 0; i < 200 && high - low > Number.EPSILON * low; i += 1) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
