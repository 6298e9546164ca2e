import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../dates/index.ts';
import { type TrainingLine, trainingDue, trainingOn } from './index.ts';

const passed: TrainingLine = { heldOn: '2026-01-10', result: 'passed', dueOn: '2027-01-10' };

describe('a training', () => {
  it('counts from the day it was held through its last good day', () => {
    expect(trainingOn([passed], '2026-01-09')).toEqual({ current: false, until: null });
    expect(trainingOn([passed], '2026-01-10').current).toBe(true);
    expect(trainingOn([passed], '2027-01-10').current).toBe(true);
    expect(trainingOn([passed], '2027-01-11')).toEqual({ current: false, until: '2027-01-10' });
  });
  it('counts for good where once is enough', () => {
    expect(trainingOn([{ ...passed, dueOn: null }], '2099-12-31')).toEqual({ current: true, until: null });
  });
  it('counts no more once a repeat was failed, also on the same day, until one is passed', () => {
    const failed: TrainingLine = { heldOn: '2026-06-01', result: 'failed', dueOn: null };
    expect(trainingOn([failed, passed], '2026-06-01')).toEqual({ current: false, until: '2026-06-01' });
    const again = { ...passed, heldOn: '2026-06-02' };
    expect(trainingOn([again, failed, passed], '2026-06-02').current).toBe(true);
    expect(trainingOn([{ ...failed, heldOn: '2026-01-10' }, passed], '2026-01-10').current).toBe(false);
  });
  it('that was only attended changes nothing', () => {
    expect(trainingOn([passed, { heldOn: '2026-05-01', result: 'attended', dueOn: null }], '2026-06-01')).toEqual({
      current: true,
      until: '2027-01-10',
    });
  });
  it('is due on the same day of a later month, or its last', () => {
    expect(trainingDue('2025-08-31', 6)).toBe('2026-02-28');
    expect(trainingDue('2025-08-31', null)).toBeNull();
  });
  it('does not hang on the order of the log', () => {
    const lines = fc.array(
      fc.record({
        heldOn: fc.integer({ min: 0, max: 400 }).map((days) => addDays('2026-01-01', days)),
        result: fc.constantFrom('passed' as const, 'failed' as const, 'attended' as const),
        dueOn: fc.option(
          fc.integer({ min: 401, max: 900 }).map((days) => addDays('2026-01-01', days)),
          { nil: null },
        ),
      }),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(fc.uniqueArray(lines, { maxLength: 1 }), fc.integer({ min: 0, max: 900 }), ([given = []], days) => {
        const apart = given.filter((line, at) => given.findIndex(({ heldOn }) => heldOn === line.heldOn) === at);
        const day = addDays('2026-01-01', days);
        expect(trainingOn(apart.toReversed(), day)).toEqual(trainingOn(apart, day));
        if (!apart.some(({ result }) => result === 'passed')) expect(trainingOn(apart, day).current).toBe(false);
      }),
    );
  });
});
