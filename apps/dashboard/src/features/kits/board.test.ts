import { describe, expect, it } from '@jest/globals';
import { boardScale, mondays, placeOf, stretches } from './board-scale.ts';
import { asksOf, isStopped, type KitRow, kitsShown } from './kit-board.ts';

const kit: KitRow = {
  id: 'k',
  code: 'KIT-0001',
  workOrder: { id: 'w', number: 'WO-1001', stage: 'teardown', customer: 'Brackenmoor Air Charter', unit: 'Q3-81 4411' },
  state: 'open',
  needBy: '2026-12-04',
  lines: 10,
  issued: 0,
  have: 10,
  onOrder: 0,
  late: 0,
  short: 0,
  orderBy: null,
  wholeOn: '2026-11-25',
  canFillNow: true,
  sentence: '',
  likely: null,
  version: 1,
};

describe('the time scale of the kit board', () => {
  const scale = boardScale('2026-11-25', ['2026-12-04', '2026-12-18']);

  it('spans five weeks at least, ten at most, and begins before today', () => {
    expect(boardScale('2026-11-25', []).days).toBe(35);
    expect(placeOf(scale, '2026-11-25')).toBeGreaterThan(0);
    expect(boardScale('2026-11-25', ['2028-01-01']).days).toBe(70);
    expect(boardScale('2026-11-25', ['2026-11-10']).from).toBe('2026-11-09');
  });

  it('names every Monday, also across the turn of a month', () => {
    // 30 November 2026 is a Monday (any calendar).
    expect(mondays(scale)).toEqual([
      '2026-11-16',
      '2026-11-23',
      '2026-11-30',
      '2026-12-07',
      '2026-12-14',
      '2026-12-21',
    ]);
  });

  it('ends a bar at the need date and shares it out by lines', () => {
    const bars = stretches(scale, { ...kit, issued: 2, have: 4, onOrder: 2, short: 2 });
    expect(bars.map((bar) => bar.kind)).toEqual(['issued', 'have', 'on-order', 'short']);
    const last = bars.at(-1);
    expect((last?.x ?? 0) + (last?.width ?? 0)).toBeCloseTo(placeOf(scale, '2026-12-04'), 6);
    expect(bars[1]?.width).toBeCloseTo(2 * (bars[0]?.width ?? 0), 6);
  });

  it('reaches from a need date that is past to today, and stays inside the picture', () => {
    const bars = stretches(scale, { ...kit, needBy: '2026-10-01' });
    expect(bars[0]?.x).toBe(0);
    expect(bars[0]?.width).toBeCloseTo(placeOf(scale, '2026-11-25'), 6);
  });
});

describe('what a kit asks for', () => {
  it('is to order before all, then to pull, then to chase, then to wait', () => {
    expect(asksOf({ ...kit, short: 1, canFillNow: false })).toBe('order');
    expect(asksOf(kit)).toBe('pull');
    expect(asksOf({ ...kit, late: 1, canFillNow: false })).toBe('chase');
    expect(asksOf({ ...kit, onOrder: 1, canFillNow: false })).toBe('wait');
    expect(asksOf({ ...kit, issued: 10 })).toBe('done');
  });

  it('stops a builder this week only when it is needed this week', () => {
    const late = { ...kit, late: 1, canFillNow: false };
    expect(isStopped(late, '2026-12-04')).toBe(true);
    expect(isStopped(late, '2026-12-03')).toBe(false);
    expect(kitsShown([kit, late], 'stopped', '2026-12-04')).toEqual([late]);
    expect(kitsShown([kit, late], 'now', '2026-12-04')).toEqual([kit]);
  });
});
