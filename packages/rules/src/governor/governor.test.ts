import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  type BenchEvent,
  benchUnits,
  engineSpeed,
  governorSpeed,
  inUnit,
  judgeReading,
  oilComplaint,
  type PointLimit,
  runStanding,
  unitsBeside,
} from './index.ts';

const read = (point: string, pass = true): BenchEvent => ({ kind: 'reading', point, pass });
const adjust = (...reopens: string[]): BenchEvent => ({ kind: 'adjustment', reopens });

describe('speeds by the drive ratio', () => {
  it('are what a ratio says, in decimal (worked by hand: 2700 × 0.895)', () => {
    expect(governorSpeed(2700, 0.895)).toBe(2416.5);
    expect(engineSpeed(2416.5, 0.895)).toBe(2700);
    expect(governorSpeed(0, 1.1)).toBe(0);
  });

  it('come back from there', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 6000 }), fc.integer({ min: 200, max: 2000 }), (rpm, thousandths) => {
        const ratio = Number(`${thousandths}e-3`);
        expect(engineSpeed(governorSpeed(rpm, ratio), ratio)).toBeCloseTo(rpm, 9);
      }),
    );
  });

  it.each([
    ['not-a-speed', 'engineRpm', () => governorSpeed(-1, 1)],
    ['not-a-speed', 'governorRpm', () => engineSpeed(Number.NaN, 1)],
    ['not-a-ratio', 'driveRatio', () => engineSpeed(2000, 0)],
  ])('refuse %s', (code, path, ask) => {
    expect(ask).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
  });
});

describe('how a run stands', () => {
  const points = ['relief', 'low stop', 'high stop'];

  it('takes the newest reading of a point, and passes when each is good', () => {
    expect(runStanding(points, [])).toMatchObject({ passes: false, open: points, out: [] });
    const failed = runStanding(points, [read('relief'), read('low stop', false), read('high stop')]);
    expect(failed).toMatchObject({ passes: false, open: [], out: ['low stop'] });
    const again = [read('relief'), read('low stop', false), read('high stop'), read('low stop')];
    expect(runStanding(points, again)).toMatchObject({ passes: true, open: [], out: [] });
    expect(runStanding(points, again).points[1]).toEqual({ point: 'low stop', state: 'good', reading: 3 });
    expect(runStanding(points, [...again, read('relief', false)]).passes).toBe(false);
  });

  it('opens what depends on an adjustment again, and nothing else', () => {
    const events = [read('relief'), read('low stop', false), read('high stop'), adjust('low stop', 'high stop')];
    const { points: standing, passes } = runStanding(points, events);
    expect(passes).toBe(false);
    expect(standing.map(({ state }) => state)).toEqual(['good', 'reopened', 'reopened']);
    expect(runStanding(points, [adjust('low stop')]).points[1]?.state).toBe('open');
  });

  it.each([
    ['no-points', 'points', [], []],
    ['point-twice', 'points', ['a', 'a'], []],
    ['unknown-point', 'events[0].point', ['a'], [read('b')]],
    ['unknown-point', 'events[1].reopens', ['a'], [read('a'), adjust('b')]],
  ])('refuses %s at %s', (code, path, names, events) => {
    expect(() => runStanding(names, events)).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
  });

  const names = ['a', 'b', 'c', 'd'];
  const event: fc.Arbitrary<BenchEvent> = fc.oneof(
    fc.record({ kind: fc.constant('reading' as const), point: fc.constantFrom(...names), pass: fc.boolean() }),
    fc.record({ kind: fc.constant('adjustment' as const), reopens: fc.subarray(names) }),
  );
  const events = fc.array(event, { maxLength: 25 });

  it('never passes unless the last word on every point is a good reading', () => {
    fc.assert(
      fc.property(events, (happened) => {
        const last = (point: string) =>
          happened.findLast((one) => (one.kind === 'reading' ? one.point === point : one.reopens.includes(point)));
        const isGood = names.every((point) => {
          const one = last(point);
          return one?.kind === 'reading' && one.pass;
        });
        expect(runStanding(names, happened).passes).toBe(isGood);
      }),
    );
  });

  it('does not depend on the order in which different points were read', () => {
    const readings = fc.uniqueArray(
      fc.record({ point: fc.constantFrom(...names), pass: fc.boolean(), at: fc.double({ noNaN: true }) }),
      { selector: ({ point }) => point },
    );
    fc.assert(
      fc.property(readings, (taken) => {
        const states = (order: typeof taken) =>
          runStanding(
            names,
            order.map(({ point, pass }) => read(point, pass)),
          ).points.map(({ state }) => state);
        expect(states([...taken].sort((one, other) => one.at - other.at))).toEqual(states(taken));
      }),
    );
  });

  it('is changed by an adjustment only where it reopens', () => {
    fc.assert(
      fc.property(events, fc.subarray(names), (happened, reopens) => {
        const [before, after] = [runStanding(names, happened), runStanding(names, [...happened, adjust(...reopens)])];
        for (const [index, { point, state }] of after.points.entries()) {
          const was = before.points[index]?.state;
          expect(state).toBe(reopens.includes(point) && was !== 'open' ? 'reopened' : was);
        }
        if (reopens.length > 0) expect(after.passes).toBe(false);
      }),
    );
  });
});

describe('a reading', () => {
  const relief: PointLimit = { low: 275, high: 295, decimals: 0, method: 'absolute', unit: 'psi' };

  it('is judged in the unit of its point', () => {
    expect(judgeReading({ value: 275, unit: 'psi' }, relief)).toEqual({
      value: 275,
      compared: 275,
      pass: true,
      margin: 0,
    });
    expect(judgeReading({ value: 260, unit: 'psi' }, relief)).toMatchObject({ pass: false, margin: -15 });
    const metric = judgeReading({ value: 2000, unit: 'kPa' }, relief);
    expect(metric.pass).toBe(true);
    expect(metric.value).toBeCloseTo(290.0755, 4); // 2000 / 6.894757293168361, NIST SP 811
  });

  it('is doubted when it would be inside in another unit, until somebody looked at the gauge', () => {
    const swapped = { value: 1965, unit: 'psi' } as const;
    expect(() => judgeReading(swapped, relief)).toThrow(
      expect.objectContaining({ code: 'unit-doubtful', path: 'unit' }),
    );
    expect(judgeReading({ ...swapped, unitChecked: true }, relief).pass).toBe(false);
    const flow: PointLimit = { low: 8, decimals: 1, method: 'absolute', unit: 'qt/min' };
    expect(() => judgeReading({ value: 2.1, unit: 'qt/min' }, flow)).toThrow(
      expect.objectContaining({ code: 'unit-doubtful' }),
    );
  });

  it('is refused when it cannot be, whoever looked', () => {
    const wild = { value: 29_000, unit: 'psi', unitChecked: true } as const;
    expect(() => judgeReading(wild, relief)).toThrow(expect.objectContaining({ code: 'reading-impossible' }));
    expect(() => judgeReading({ value: -3, unit: 'psi' }, relief)).toThrow(
      expect.objectContaining({ code: 'reading-impossible' }),
    );
  });

  it('of another quantity is none of this point', () => {
    for (const unit of benchUnits)
      if (!unitsBeside('psi').includes(unit))
        expect(() => judgeReading({ value: 280, unit }, relief)).toThrow(
          expect.objectContaining({ code: 'units-differ', path: 'unit' }),
        );
    expect(unitsBeside('psi')).toEqual(['psi', 'kPa']);
    expect(unitsBeside('rpm')).toEqual(['rpm']);
    expect(() => inUnit(Number.NaN, 'psi', 'psi')).toThrow(expect.objectContaining({ code: 'not-a-number' }));
  });

  it('inside its limits and taken in the other unit is never judged as bad in silence', () => {
    const within = fc.double({ min: 275, max: 295, noNaN: true });
    fc.assert(
      fc.property(within, (psi) => {
        const asMetric = inUnit(psi, 'psi', 'kPa');
        expect(() => judgeReading({ value: asMetric, unit: 'psi' }, { ...relief, low: 274, high: 296 })).toThrow(
          expect.objectContaining({ code: 'unit-doubtful' }),
        );
      }),
    );
  });
});

describe('the oil', () => {
  const band = { low: 150, high: 180, unit: 'degF' } as const;
  it('is at its temperature, or a sentence says what is wrong', () => {
    expect(oilComplaint({ value: 150, unit: 'degF' }, band)).toBeUndefined();
    expect(oilComplaint({ value: 70, unit: 'degC' }, band)).toBeUndefined(); // 158 °F
    expect(oilComplaint({ value: 70, unit: 'degF' }, band)).toMatch(/below .*70 degC would be inside/);
    expect(oilComplaint({ value: 300, unit: 'degF' }, band)).toBe('300 degF is above 150 to 180 degF');
  });
});
