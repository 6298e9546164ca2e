import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { convert, convertDifference, type Unit } from './index.ts';

const FAMILIES: Unit[][] = [
  ['in', 'mm'],
  ['ft-lb', 'in-lb', 'N-m'],
  ['psi', 'kPa'],
  ['ips', 'mm/s'],
  ['oz', 'g', 'lb', 'kg'],
  ['oz-in', 'g-in', 'g-mm'],
  ['degF', 'degC'],
  ['gal', 'qt', 'L'],
  ['gal/min', 'qt/min', 'qt/h', 'L/min', 'L/h'],
];
const units = FAMILIES.flat();

test('the worked examples', () => {
  expect(convert(1, 'in', 'mm')).toBe(25.4);
  expect(convert(350, 'degF', 'degC')).toBe(176.66666666666666); // 176 and two thirds, nearest number
  expect(convertDifference(25, 'degF', 'degC')).toBe(13.88888888888889);
});

test('units of one quantity convert into each other, all others are refused', () => {
  for (const from of units)
    for (const to of units) {
      const together = FAMILIES.some((family) => family.includes(from) && family.includes(to));
      if (together) expect(Number.isFinite(convert(3, from, to))).toBe(true);
      else expect(() => convert(3, from, to)).toThrow(expect.objectContaining({ code: 'units-differ', path: 'to' }));
    }
});

test('there and back is the same value to the last digits, and a unit to itself changes nothing', () => {
  const family = fc.constantFrom(...FAMILIES);
  const value = fc.double({ min: -1e12, max: 1e12, noNaN: true });
  fc.assert(
    fc.property(family, fc.nat(), fc.nat(), value, (members, a, b, number) => {
      const [from, to] = [members[a % members.length]!, members[b % members.length]!];
      const back = convert(convert(number, from, to), to, from);
      // Near the zero of the other scale a temperature loses relative, not absolute, accuracy.
      const allowed = 4 * Number.EPSILON * Math.max(Math.abs(number), from.startsWith('deg') ? 64 : Number.MIN_VALUE);
      expect(Math.abs(back - number)).toBeLessThanOrEqual(Math.max(allowed, 1e-320));
      expect(convert(number, from, from)).toBe(number + 0);
    }),
  );
});

describe('whole multiples are exact', () => {
  test('between units whose ratio is a whole number', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), (n) => {
        expect(convert(n, 'ft-lb', 'in-lb')).toBe(n * 12);
        expect(convert(n, 'lb', 'oz')).toBe(n * 16);
        expect(convert(n, 'kg', 'g')).toBe(n * 1000);
        expect(convert(n * 5, 'degC', 'degF')).toBe(n * 9 + 32);
        expect(convert(n, 'gal', 'qt')).toBe(n * 4);
        expect(convert(n, 'gal/min', 'qt/h')).toBe(n * 240);
      }),
    );
  });
});

test.each([
  [Number.NaN, 'in', 'mm', 'not-a-number'],
  [Number.POSITIVE_INFINITY, 'in', 'mm', 'not-a-number'],
  [1, 'yd', 'mm', 'unknown-unit'],
  [1, 'mm', 'toString', 'unknown-unit'],
  [1, 'oz', 'oz-in', 'units-differ'],
  [1.7e308, 'in', 'mm', 'out-of-range'],
])('%p %s to %s is refused as %s', (value, from, to, code) => {
  expect(() => convert(value, from as Unit, to as Unit)).toThrow(expect.objectContaining({ name: 'RuleError', code }));
});
