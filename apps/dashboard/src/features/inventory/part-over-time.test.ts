import { describe, expect, it } from '@jest/globals';
import { partOverTime } from './part-over-time.ts';

describe('a part over the coming weeks', () => {
  const ahead = {
    have: 10,
    promised: [{ date: '2026-12-01', quantity: 4 }],
    expiring: [{ date: '2026-12-09', quantity: 5 }],
    due: [{ date: '2026-11-20', quantity: 6 }],
    short: [{ date: '2026-12-16', quantity: 3 }],
  };

  it('takes off what is promised and what expires, and adds what is due, a late delivery from today on', () => {
    const days = partOverTime('2026-11-25', ahead, 8);
    expect(days[0]).toEqual({ date: '2026-11-25', have: 10, onOrder: 6, short: 0 });
    expect(days[1]).toEqual({ date: '2026-11-28', have: 10, onOrder: 6, short: 0 });
    expect(days[2]).toEqual({ date: '2026-12-01', have: 6, onOrder: 6, short: 0 });
    expect(days[5]).toEqual({ date: '2026-12-10', have: 1, onOrder: 6, short: 0 });
    expect(days[7]).toEqual({ date: '2026-12-16', have: 1, onOrder: 6, short: 3 });
  });

  it('never shows less than nothing on the shelf', () => {
    const all = partOverTime('2026-11-25', { ...ahead, have: 3 }, 4);
    expect(all.map((day) => day.have)).toEqual([3, 3, 0, 0]);
  });
});
