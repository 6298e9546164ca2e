import { expect, it } from '@jest/globals';
import { askedFirst, Exact, otherUnit, readDecimal, unitText } from './index.ts';

it('a reading is taken as written', () => {
  expect(readDecimal('0.30', { what: 'Depth', path: 'depth' }).toString()).toBe('0.3');
  expect(() => readDecimal('1e3', { what: 'Depth', path: 'depth' })).toThrow('Depth is no decimal number.');
});
it('a unit as it is written', () => {
  expect(['degF', 'degC', 'psi'].map(unitText)).toEqual(['°F', '°C', 'psi']);
});
it('a reading outside of its band that another unit explains', () => {
  const band = { low: new Exact(195), high: new Exact(205) };
  expect(otherUnit(new Exact(1379), band, askedFirst(['kPa', 'psi'], 'psi'))).toBe('kPa');
  expect(otherUnit(new Exact(200), band, ['psi', 'kPa'])).toBeUndefined();
  expect(otherUnit(new Exact(300), band, ['psi', 'kPa'])).toBeUndefined();
});
