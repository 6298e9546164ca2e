import { describe, expect, it } from '@jest/globals';
import type { Aircraft } from './customers.ts';
import { doubtOf, emptyEntry, gridRows, sentRows } from './readings-draft.ts';

const aircraft = (id: string, tenths?: number): Aircraft => ({
  ...{ id, customerId: 'c', registration: id, airframe: '', engine: '' },
  latestReadings:
    tenths === undefined
      ? []
      : [
          {
            readOn: '2026-11-01',
            meter: 'hour-meter',
            hoursTenths: tenths,
            cycles: null,
            recordedAt: '2026-11-01T00:00:00Z',
          },
        ],
});

describe('a grid of readings', () => {
  const rows = gridRows([aircraft('a', 1000), aircraft('b')]);
  const [first, second] = rows;
  const typed = (hours: string) => ({ ...emptyEntry, hours });

  it('has a row for each meter that was read, and one for an aircraft never read', () => {
    expect(rows.map(({ key }) => key)).toEqual(['a hour-meter', 'b tachometer']);
  });

  it('asks about a lower figure and about more than twelve hours a day', () => {
    if (!first || !second) throw new Error('no rows');
    expect(doubtOf(first, typed('99.9'), '2026-11-02')).toBe('lower');
    expect(doubtOf(first, typed('112.0'), '2026-11-02')).toBeUndefined();
    expect(doubtOf(first, typed('112.1'), '2026-11-02')).toBe('fast');
    expect(doubtOf(first, typed(''), '2026-11-02')).toBeUndefined();
    expect(doubtOf(second, typed('1.0'), '2026-11-02')).toBeUndefined();
  });

  it('sends only rows with a figure, and the replaced meter where it is said', () => {
    const replaced = { ...typed('3.5'), isReplaced: true, replacedOn: '2026-11-01', oldHours: '' };
    expect(sentRows(rows, { 'a hour-meter': replaced })).toEqual([
      {
        ...{ aircraftId: 'a', meter: 'hour-meter', sure: false, hoursTenths: 35 },
        replaced: { on: '2026-11-01', oldTenths: 'unknown' },
      },
    ]);
  });
});
