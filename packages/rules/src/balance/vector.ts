import { RuleError } from '../errors/index.ts';

/** Amplitude in any one unit of vibration; phase in degrees, 0 ≤ a < 360 in answers. */
export type Vibration = { amplitude: number; phase: number };
/** Mass in any one unit; angle in degrees, counted in the same direction and from the same mark as phase. */
export type Weight = { mass: number; angle: number };

/** A vector in the plane of rotation as a complex number. */
export type Vector = { re: number; im: number };

export const ZERO: Vector = { re: 0, im: 0 };

export const add = (a: Vector, b: Vector): Vector => ({ re: a.re + b.re, im: a.im + b.im });
export const subtract = (a: Vector, b: Vector): Vector => ({ re: a.re - b.re, im: a.im - b.im });
export const scale = (a: Vector, by: number): Vector => ({ re: a.re * by, im: a.im * by });
export const multiply = (a: Vector, b: Vector): Vector => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
export const conjugate = (a: Vector): Vector => ({ re: a.re, im: -a.im });
export const length = (a: Vector): number => Math.hypot(a.re, a.im);
export const divide = (a: Vector, b: Vector): Vector =>
  scale(multiply(a, conjugate(b)), 1 / (b.re * b.re + b.im * b.im));

export function polar(amount: number, degrees: number): Vector {
  const radians = (degrees * Math.PI) / 180;
  return { re: amount * Math.cos(radians), im: amount * Math.sin(radians) };
}

/** Degrees, 0 ≤ a < 360, to a billionth, so that −10⁻¹⁴ is 0 and not 360. Nothing has no direction: 0. */
export function angleOf(vector: Vector): number {
  return normal((Math.atan2(vector.im, vector.re) * 180) / Math.PI);
}

export function normal(degrees: number): number {
  const rounded = Math.round(degrees * 1e9) / 1e9;
  return ((rounded % 360) + 360) % 360;
}

/** `noise`: a length that is rounding of larger numbers and counts as nothing. */
export function weightOf(vector: Vector, noise = 0): Weight {
  const mass = length(vector);
  return mass <= noise ? { mass: 0, angle: 0 } : { mass, angle: angleOf(vector) };
}

export function vibrationOf(vector: Vector): Vibration {
  return { amplitude: length(vector), phase: angleOf(vector) };
}

export function readVibration({ amplitude, phase }: Vibration, path: string): Vector {
  return polar(readAmount(amplitude, `${path}.amplitude`), readAngle(phase, `${path}.phase`));
}

export function readWeight({ mass, angle }: Weight, path: string): Vector {
  return polar(readAmount(mass, `${path}.mass`), readAngle(angle, `${path}.angle`));
}

export function readTrial(trial: Weight, path: string): Vector {
  const vector = readWeight(trial, path);
  if (trial.mass > 0) return vector;
  throw new RuleError('no-trial-weight', 'A trial weight is above 0.', `${path}.mass`);
}

export function readAmount(amount: number, path: string): number {
  if (Number.isFinite(amount) && amount >= 0) return amount;
  throw new RuleError('not-an-amount', 'An amplitude or mass is a number, 0 or more.', path);
}

export function readAngle(degrees: number, path: string): number {
  if (Number.isFinite(degrees)) return degrees;
  throw new RuleError('not-an-angle', 'An angle is a number of degrees.', path);
}
