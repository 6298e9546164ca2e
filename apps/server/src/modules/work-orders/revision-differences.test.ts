import { describe, expect, it } from '@jest/globals';
import { kitDifferences, layOver, type StepNow, stepDifferences } from './revision-differences.ts';
import type { NewStep } from './splice-steps.ts';

const measure = (low: string) => ({ name: 'width', unit: 'in', decimals: 3, method: 'absolute', low, high: null });
const step = (title: string, more: Partial<NewStep> = {}): NewStep => ({
  ...{
    title,
    instruction: '',
    process: 'cleaning',
    level: 'perform',
    kind: 'work',
    phase: 'evaluation',
    standardMinutes: 10,
  },
  ...{ instrumentKind: null, caution: null, fact: null, measures: [] },
  ...more,
});
const now = (title: string, state: StepNow['state'], more: Partial<StepNow> = {}): StepNow => ({
  ...step(title),
  id: title,
  state,
  findingId: null,
  ...more,
});
const titles = (placed: ReturnType<typeof layOver>) =>
  placed.map((one) => {
    if ('kept' in one) return `kept ${one.kept.title}`;
    if ('dropped' in one) return `dropped ${one.dropped.title}`;
    return 'renewed' in one ? `renewed ${one.by.title}` : `new ${one.copied.title}`;
  });

describe('a newer revision over open work', () => {
  it('keeps what is signed, drops what it no longer asks for and brings what it asks for, in its order', () => {
    const traveler = [now('Clean', 'signed'), now('Measure', 'signed'), now('Old test', 'open'), now('Paint', 'open')];
    const route = [step('Clean'), step('Degrease'), step('Measure'), step('Paint'), step('Inspect')];
    expect(titles(layOver(traveler, route))).toEqual([
      'kept Clean',
      'new Degrease',
      'kept Measure',
      'renewed Paint',
      'new Inspect',
      'dropped Old test',
    ]);
  });

  it('asks again for what an earlier revision dropped', () => {
    expect(titles(layOver([now('Clean', 'not-needed')], [step('Clean')]))).toEqual(['new Clean', 'kept Clean']);
  });

  it('keeps the repair of a finding where it stands', () => {
    const traveler = [
      now('Clean', 'signed'),
      now('Weld, again', 'open', { findingId: 'f', phase: 'repair' }),
      now('Paint', 'open'),
    ];
    expect(titles(layOver(traveler, [step('Clean'), step('Paint')]))).toEqual([
      'kept Clean',
      'renewed Paint',
      'kept Weld, again',
    ]);
  });

  it('names every line that differs, and says which no longer applies because it is signed', () => {
    const traveler = [
      now('Measure blade', 'open', { measures: [measure('6.180')] }),
      now('Measure shank', 'signed', { measures: [measure('3.498')] }),
      now('Old test', 'open'),
    ];
    const route = [
      step('Measure blade', { measures: [measure('6.190')] }),
      step('Measure shank', { measures: [measure('3.500')] }),
      step('New test'),
    ];
    expect(
      stepDifferences('TR-00001', traveler, route).map(({ area, change, where, what, applies }) => [
        area,
        change,
        where,
        what,
        applies,
      ]),
    ).toEqual([
      ['step', 'removed', 'TR-00001', 'Old test', true],
      ['limit', 'changed', 'TR-00001, Measure blade', 'width', true],
      ['limit', 'changed', 'TR-00001, Measure shank', 'width', false],
      ['step', 'added', 'TR-00001', 'New test', true],
    ]);
  });

  it('says nothing when nothing differs', () => {
    expect(stepDifferences('TR-00001', [now('Clean', 'open')], [step('Clean')])).toEqual([]);
  });

  it('compares kit lists by position and part', () => {
    const seal = { part: 'Q1', position: 'piston', quantity: 1, minimum: null, source: 'new' };
    expect(
      kitDifferences(
        [seal],
        [
          { ...seal, quantity: 2 },
          { ...seal, part: 'Q2' },
        ],
      ),
    ).toMatchObject([
      { change: 'changed', what: 'Q1 at piston', before: '1, new', after: '2, new' },
      { change: 'added', what: 'Q2 at piston', before: null, after: '1, new' },
    ]);
  });
});
