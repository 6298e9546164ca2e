import { describe, expect, it } from '@jest/globals';
import { fanPlace, fanScale, fanWords } from './DueFan.tsx';

const today = '2026-11-28';
const row = (dueOn: string, earliest = dueOn, latest = dueOn) => ({ dueOn, earliest, latest });

describe('the fan of likely dates', () => {
  it('lies on one scale with today on it, whatever the rows', () => {
    expect(fanScale([], today)).toEqual({ today, from: -7, to: 30 });
    expect(fanScale([row('2027-03-01', '2027-01-01', '2027-06-01')], today)).toMatchObject({ from: -7, to: 185 });
    expect(fanScale([row('2020-01-01'), row('2040-01-01')], today)).toMatchObject({ from: -365, to: 1095 });
  });

  it('runs from left to right in the order of days, and off the edge beyond', () => {
    const scale = fanScale([row('2027-03-01', '2027-01-01', '2027-06-01')], today);
    const places = ['2026-11-01', today, '2027-01-01', '2027-03-01', '2027-06-01', '2030-01-01'].map((date) =>
      fanPlace(scale, date),
    );
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect([places[0], places.at(-1)]).toEqual([0, 180]);
  });

  it('says in words what it shows', () => {
    expect(fanWords(row('2027-03-01'))).toBe('likely 1 Mar 2027');
    expect(fanWords(row('2027-03-01', '2027-01-01', '2027-06-01'))).toBe(
      'likely 1 Mar 2027, between 1 Jan 2027 and 1 Jun 2027',
    );
    expect(fanWords(row('2027-03-01', '2027-01-01', 'unknown'))).toContain('nobody can say');
  });
});
