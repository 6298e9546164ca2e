import { convert, convertDifference, type Unit } from '@hubwright/rules/units';
import { expect, test } from '@jest/globals';

// NIST Special Publication 811 (2008), Appendix B.8. Exact factors there are in bold; the longer products follow from
// 1 lbf = 0.45359237 kg × 9.80665 m/s² = 4.4482216152605 N. Decimals recomputed here by hand from those definitions.
test.each<[number, Unit, Unit, number]>([
  [1, 'in', 'mm', 25.4],
  [1, 'lb', 'kg', 0.45359237],
  [1, 'oz', 'g', 28.349523125],
  [3.5, 'oz', 'g', 99.2233309375],
  [1, 'ft-lb', 'N-m', 1.3558179483314003],
  [1, 'in-lb', 'N-m', 0.1129848290276167],
  [12, 'ft-lb', 'N-m', 16.269815379976805],
  [1, 'psi', 'kPa', 6.894757293168361],
  [1, 'ips', 'mm/s', 25.4],
  [1, 'oz-in', 'g-in', 28.349523125],
  [1, 'oz-in', 'g-mm', 720.077887375],
  [1, 'g-in', 'g-mm', 25.4],
  [1, 'gal', 'L', 3.785411784],
  // A governor bench: relief pressure, pump capacity (1 US liquid quart = 57.75 in³, a quarter of the gallon of 231 in³), oil.
  [300, 'psi', 'kPa', 2068.4271879505086],
  [1, 'qt', 'L', 0.946352946],
  [1, 'qt/min', 'L/min', 0.946352946],
  [60, 'qt/h', 'L/min', 0.946352946],
  [100, 'degF', 'degC', 37.77777777777778],
  [-40, 'degF', 'degC', -40],
  [68, 'degF', 'degC', 20],
  [212, 'degF', 'degC', 100],
  [0, 'degC', 'degF', 32],
])('%p %s is %p %s', (value, from, to, expected) => {
  expect(convert(value, from, to)).toBe(expected);
});

// The same table prints these factors rounded to seven figures.
test.each<[Unit, Unit, string]>([
  ['ft-lb', 'N-m', '1.355818e+0'],
  ['in-lb', 'N-m', '1.129848e-1'],
  ['psi', 'kPa', '6.894757e+0'],
  ['oz', 'g', '2.834952e+1'],
  ['lb', 'kg', '4.535924e-1'],
  ['gal', 'L', '3.785412e+0'],
  ['qt', 'L', '9.463529e-1'],
])('one %s in %s is %s as printed', (from, to, printed) => {
  expect(convert(1, from, to).toExponential(6)).toBe(printed);
});

// A tolerance of ±25 °F is ±13.9 °C, not -3.9 °C: NIST SP 811, B.8, temperature interval (°C = °F / 1.8).
test('a difference in degrees', () => {
  expect(convertDifference(25, 'degF', 'degC')).toBeCloseTo(13.888889, 6);
});
