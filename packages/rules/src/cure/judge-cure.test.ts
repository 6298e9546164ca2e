import { describe, expect, it } from '@jest/globals';
import { type CureSpec, judgeCure } from './index.ts';

const minute = 60_000;
const spec: CureSpec = {
  ...{ unit: '°F', low: 240, high: 260, minimumMinutes: 90, dips: 'restart', heatUpMost: 5, coolDownMost: 5 },
  ...{ overMinutes: 10, coolTo: 140, vacuum: { least: 22, unit: 'inHg' } },
};
type Point = readonly [minutes: number, temperature: number, vacuum?: number];
const good: Point[] = [
  [0, 70],
  [36, 250],
  [134, 250],
  [160, 130],
];
const cure = (points: readonly Point[] = good, more: Partial<Parameters<typeof judgeCure>[0]> = {}) =>
  judgeCure({
    chart: points.map(([minutes, temperature, vacuum = 25]) => ({ at: minutes * minute, temperature, vacuum })),
    spec,
    ...more,
  });
const failing = (verdict: ReturnType<typeof cure>) =>
  verdict.segments.filter(({ reasons }) => reasons.length > 0).map(({ name }) => name);

describe('a cure', () => {
  it('at its very limits is good: rates, hold and vacuum', () => {
    expect(cure()).toMatchObject({ good: true, reasons: [] });
    expect(cure().holdMinutes).toBeCloseTo(102.166667, 5);
    // 240 reached at 34 min, left at 124: 90 min. 5 °F a minute down, 22 inHg all along.
    const limits: Point[] = [
      [0, 70, 22],
      [34, 240, 22],
      [124, 240, 22],
      [144, 140, 22],
    ];
    expect(cure(limits)).toMatchObject({ good: true, holdMinutes: 90 });
  });
  it('names the segment that failed, and fails no other with it', () => {
    const fast = cure([
      [0, 70],
      [20, 250],
      [134, 250],
      [160, 130],
    ]);
    expect(failing(fast)).toEqual(['heat-up']);
    expect(fast.reasons).toEqual(['Heated at 9 °F/min, 0 min into it; 5 °F/min is allowed.']);
    expect(
      failing(
        cure([
          [0, 70],
          [36, 250],
          [100, 250],
          [126, 130],
        ]),
      ),
    ).toEqual(['hold']);
    expect(
      failing(
        cure([
          [0, 70],
          [36, 250],
          [134, 250],
          [144, 130],
        ]),
      ),
    ).toEqual(['cool-down']);
    expect(
      failing(
        cure([
          [0, 70],
          [36, 250],
          [80, 250, 18],
          [134, 250],
          [160, 130],
        ]),
      ),
    ).toEqual(['vacuum']);
    expect(
      failing(
        cure([
          [0, 70],
          [36, 250],
          [80, 262],
          [134, 250],
          [160, 130],
        ]),
      ),
    ).toContain('hold');
  });
  it('that dips begins its hold anew, or loses the time outside', () => {
    const dipped: Point[] = [
      [0, 70],
      [36, 250],
      [90, 250],
      [92, 235],
      [94, 250],
      [134, 250],
      [160, 130],
    ];
    expect(failing(cure(dipped))).toEqual(['hold']);
    expect(cure(dipped).reasons[0]).toMatch(/^Held 5\d(\.\d)? min within 240 to 260; 90 are asked for\.$/);
    expect(cure(dipped, { spec: { ...spec, dips: 'subtract' } }).good).toBe(true);
  });
  it('is shown whole: heating up, and cooled to where it may be taken out', () => {
    expect(cure(good.slice(1)).reasons).toContain('The chart does not show the heating up.');
    expect(cure(good.slice(0, 3)).reasons).toEqual(['The chart ends at 250 °F; it is cooled to 140 on the chart.']);
    // Vacuum let go after that is nobody's fault.
    expect(cure([...good, [170, 90, 0]]).good).toBe(true);
  });
  it('is of material whose out-time was not over when it began', () => {
    const lot = { code: 'L-1', part: 'LM-PR7', outMinutes: 14_400, outTimeHours: 240 };
    expect(cure(good, { materials: [lot] }).segments.at(-1)).toEqual({
      ...{ name: 'out-time', said: 'LM-PR7 L-1: out 240 h, 0 h left', reasons: [] },
    });
    const over = cure(good, { materials: [{ ...lot, outMinutes: 14_460 }] });
    expect(over.reasons).toEqual(['L-1 was out for 241 h when the cure began; 240 h are allowed.']);
    expect(cure(good, { materials: [{ ...lot, outMinutes: null, outTimeHours: null }] }).good).toBe(true);
  });
  it('is not judged in another scale, backwards, from one point or without its vacuum', () => {
    const celsius = good.map(([minutes, temperature]): Point => [minutes, Math.round(((temperature - 32) * 5) / 9)]);
    expect(() => cure(celsius)).toThrow(/121 °C would be inside/);
    expect(failing(cure(celsius, { unitChecked: true }))).toContain('hold');
    expect(() => cure([...good].reverse())).toThrow(/forward/);
    expect(() => cure(good.slice(0, 1))).toThrow(/two readings/);
    const bare = good.map(([minutes, temperature]) => ({ at: minutes * minute, temperature }));
    expect(() => judgeCure({ chart: bare, spec })).toThrow(/its vacuum/);
    expect(() => cure(good, { spec: { ...spec, coolTo: 250 } })).toThrow(/band above/);
  });
});
