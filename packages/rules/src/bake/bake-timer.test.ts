import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { bakeTimer } from './index.ts';

const minute = 60_000;
const spec = { startWithinMinutes: 240, minimumMinutes: 1380 };
const at = (minutes: number, more: object = {}) => bakeTimer({ platedAt: 0, now: minutes * minute, spec, ...more });

describe('the clocks of a bake', () => {
  it('are quiet for three quarters of the time allowed, then louder, then too late', () => {
    expect([0, 179, 180, 209, 210, 240, 241].map((minutes) => at(minutes).state)).toEqual([
      ...['to-begin', 'to-begin', 'soon', 'soon', 'urgent', 'urgent', 'too-late'],
    ]);
    expect(at(190)).toMatchObject({ startBy: 240 * minute, alarmFrom: 180 * minute, lateByMinutes: 0 });
    expect(at(250).lateByMinutes).toBe(10);
  });
  it('call out half an hour before at least, and no longer than the time there is', () => {
    expect(at(0, { spec: { ...spec, startWithinMinutes: 60 } }).alarmFrom).toBe(30 * minute);
    expect(at(0, { spec: { ...spec, startWithinMinutes: 20 } }).alarmFrom).toBe(0);
    expect(at(0, { spec: { ...spec, alarmMinutes: 90 } }).alarmFrom).toBe(150 * minute);
  });
  it('turn to the hold once it began; how late it began stays', () => {
    const begunAt = 250 * minute;
    expect(at(251, { begunAt })).toMatchObject({ state: 'in-oven', lateByMinutes: 10, outFrom: 1630 * minute });
    expect(at(1629, { begunAt }).state).toBe('in-oven');
    expect(at(1630, { begunAt }).state).toBe('may-come-out');
  });
  it('never grow quieter while nothing is done', () => {
    const order = ['to-begin', 'soon', 'urgent', 'too-late'];
    const times = fc.tuple(fc.nat(5000), fc.nat(5000), fc.integer({ min: 1, max: 4000 }));
    fc.assert(
      fc.property(times, ([a, b, startWithinMinutes]) => {
        const of = (minutes: number) => order.indexOf(at(minutes, { spec: { ...spec, startWithinMinutes } }).state);
        expect(of(Math.max(a, b))).toBeGreaterThanOrEqual(of(Math.min(a, b)));
      }),
    );
  });
});
