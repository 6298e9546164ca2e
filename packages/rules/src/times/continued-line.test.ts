import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { carriedOver, continuedLine } from './continued-line.ts';

const change = (on: string, oldTenths: number | 'unknown', newTenths: number) => ({ on, oldTenths, newTenths });
const reading = (no: number, date: string, tenths: number) => ({ no, date, tenths });

describe('readings across replaced meters', () => {
  it('go on where the new meter began', () => {
    const changes = [change('2026-03-01', 30_000, 0), change('2026-06-01', 500, 120)];
    // By hand: 29 900 is 100 before the first change, so 100 before 0, and 0 is 500 − 120 = 380 … carried: −100 − 380 = −480.
    expect(
      continuedLine(
        [reading(3, '2026-07-01', 150), reading(1, '2026-02-01', 29_900), reading(2, '2026-05-01', 400)],
        changes,
      ),
    ).toEqual([reading(1, '2026-02-01', -480), reading(2, '2026-05-01', 20), reading(3, '2026-07-01', 150)]);
  });

  it('before a change whose old figure nobody wrote down are left out', () => {
    const changes = [change('2026-06-01', 'unknown', 0)];
    expect(continuedLine([reading(1, '2026-05-01', 400), reading(2, '2026-07-01', 10)], changes)).toEqual([
      reading(2, '2026-07-01', 10),
    ]);
    expect(carriedOver(changes, 1)).toBe('unknown');
    expect(carriedOver(changes, 2)).toBe(0);
  });

  it('a meter replaced by one that shows the same changes nothing', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(1_000), { minLength: 2, maxLength: 12 }), fc.nat(11), (steps, at) => {
        const total = (upTo: number) => steps.slice(0, upTo + 1).reduce((sum, step) => sum + step, 0);
        const days = steps.map((_, i) => ({ date: `2026-01-${String(i + 10)}`, tenths: total(i) }));
        const cut = Math.min(at, days.length - 1);
        const figure = days[cut]!.tenths;
        const one = continuedLine(
          days.map((day) => ({ ...day, no: 1 })),
          [],
        );
        const two = continuedLine(
          days.map((day, i) => ({ ...day, no: i <= cut ? 1 : 2 })),
          [change('2026-01-20', figure, figure)],
        );
        expect(two.map(({ tenths }) => tenths)).toEqual(one.map(({ tenths }) => tenths));
      }),
    );
  });
});
