import { describe, expect, it } from '@jest/globals';
import { type MeterPoint, outOfLine } from './meter-line.ts';

const point = (on: string, tenths: number, change: Partial<MeterPoint> = {}): MeterPoint => ({
  ...{ on, tenths, no: 1, what: 'a reading', isNew: false },
  ...change,
});
const said = (on: string, tenths: number, no = 1) => point(on, tenths, { isNew: true, no });
const fault = (...points: MeterPoint[]) => outOfLine(points)?.fault;

describe('what a meter showed', () => {
  it('never falls, by what came before or after (the worked example)', () => {
    expect(outOfLine([point('2026-03-01', 1000), said('2026-03-02', 990)])).toMatchObject({
      fault: 'backwards',
      earlier: { on: '2026-03-01' },
    });
    expect(fault(point('2026-03-01', 1000), said('2026-02-01', 1001))).toBe('backwards');
  });
  it('goes up by at most 24 hours a day', () => {
    expect(fault(point('2026-03-01', 1000), said('2026-03-02', 1480))).toBeUndefined();
    expect(fault(point('2026-03-01', 1000), said('2026-03-02', 1481))).toBe('too-fast');
    expect(fault(said('2026-03-01', 1000), point('2026-03-02', 1481))).toBe('too-fast');
  });
  it('may be said in any order for one day, and says nothing of another meter', () => {
    expect(fault(point('2026-03-01', 1000), said('2026-03-01', 990))).toBeUndefined();
    expect(fault(point('2026-03-01', 1000), said('2026-03-02', 0, 2))).toBeUndefined();
  });
  it('is not judged again once on record', () => {
    expect(fault(point('2026-03-01', 1000), point('2026-03-02', 1))).toBeUndefined();
  });
});
