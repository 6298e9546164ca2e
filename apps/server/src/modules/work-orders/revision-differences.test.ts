import { describe, expect, it } from '@jest/globals';
import { layOver, lifeDifferences, type StepNow, stepDifferences } from './revision-differences.ts';
import type { NewStep } from './splice-steps.ts';

const measure = (low: string) => ({
  ...{ name: 'width', unit: 'in', decimals: 3, method: 'absolute', low, high: null },
  ...{ dimension: 'width', station: '24', zone: null, chart: null, basis: null },
});
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
  ...{ equipmentKind: null, materials: [] },
  ...{ instrumentKind: null, caution: null, fact: null, form: [], peening: null, sheet: null, measures: [] },
  ...{ branch: null, waitMinutes: 0, outside: false, batched: false, tools: [], attempt: 1, mostRepairs: 2 },
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

  it('keeps painting behind what a finding has blended', () => {
    const traveler = [
      now('Measure', 'failed'),
      now('Blend it', 'open', { findingId: 'f', phase: 'repair' }),
      now('Test it', 'open', { findingId: 'f', phase: 'repair' }),
      now('Polish', 'open', { phase: 'repair' }),
      now('Paint', 'open', { phase: 'repair' }),
    ];
    const route = [
      step('Measure'),
      step('Etch', { phase: 'repair' }),
      step('Polish', { phase: 'repair' }),
      step('Paint', { phase: 'repair' }),
    ];
    expect(titles(layOver(traveler, route))).toEqual([
      'kept Measure',
      'kept Blend it',
      'kept Test it',
      'new Etch',
      'renewed Polish',
      'renewed Paint',
    ]);
  });

  it('does again what was signed by other words or limits, right behind what was signed', () => {
    const traveler = [
      now('Clean', 'signed'),
      now('Measure', 'signed', { measures: [measure('6.180')] }),
      now('Paint', 'open'),
    ];
    const route = [step('Clean'), step('Measure', { measures: [measure('6.190')] }), step('Paint')];
    expect(titles(layOver(traveler, route))).toEqual(['kept Clean', 'kept Measure', 'new Measure', 'renewed Paint']);
    const again = [
      ...traveler.slice(0, 2),
      now('Measure', 'open', { measures: [measure('6.190')] }),
      now('Paint', 'open'),
    ];
    expect(titles(layOver(again, route))).toEqual(['kept Clean', 'kept Measure', 'renewed Measure', 'renewed Paint']);
    const done = [...traveler.slice(0, 2), now('Measure', 'signed', { measures: [measure('6.190')] })];
    expect(titles(layOver(done, route))).toEqual(['kept Clean', 'kept Measure', 'kept Measure', 'new Paint']);
  });

  it('measures again by the new limits what is measured again after a repair, and leaves a failed step to its finding', () => {
    const traveler = [
      now('Measure', 'failed', { measures: [measure('6.180')] }),
      now('Blend', 'open', { findingId: 'f', phase: 'repair' }),
      now('Measure, again after F-1', 'open', {
        findingId: 'f',
        phase: 'repair',
        attempt: 2,
        measures: [measure('6.180')],
      }),
      now('Paint', 'open'),
    ];
    const route = [step('Measure', { measures: [measure('6.190')] }), step('Paint')];
    const placed = layOver(traveler, route);
    expect(titles(placed)).toEqual(['kept Measure', 'renewed Paint', 'kept Blend', 'renewed Measure, again after F-1']);
    const renewed = placed.flatMap((one) => ('renewed' in one ? [one.by] : []));
    expect(renewed[1]).toMatchObject({ phase: 'repair', attempt: 2, measures: [{ low: '6.190' }] });
  });

  it('keeps what a failed test opened again, by the new revision, and drops it only with the step it repeats', () => {
    const again = (title: string) => now(`${title}, again after the failed leak test`, 'open', { attempt: 2 });
    const traveler = [now('Build', 'signed'), now('Leak test', 'failed'), again('Build'), again('Leak test')];
    const route = [step('Build'), step('Leak test', { instruction: 'Twice.' })];
    const placed = layOver(traveler, route);
    expect(titles(placed)).toEqual([
      ...['kept Build', 'kept Leak test', 'renewed Build, again after the failed leak test'],
      'renewed Leak test, again after the failed leak test',
    ]);
    expect(placed.flatMap((one) => ('renewed' in one ? [one.by] : []))[1]).toMatchObject({
      ...{ instruction: 'Twice.', attempt: 2, title: 'Leak test, again after the failed leak test' },
    });
    expect(stepDifferences('hub', traveler, [step('Build'), step('Leak test')])).toEqual([]);
    expect(titles(layOver(traveler, [step('Build')])).at(-1)).toBe(
      'dropped Leak test, again after the failed leak test',
    );
  });

  it('names every line that differs, and what becomes of what is signed already', () => {
    const traveler = [
      now('Measure blade', 'open', { measures: [measure('6.180')] }),
      now('Measure shank', 'signed', { measures: [measure('3.498')] }),
      now('Old test', 'open'),
      now('Old polish', 'signed'),
    ];
    const route = [
      step('Measure blade', { measures: [measure('6.190')] }),
      step('Measure shank', { measures: [measure('3.500')] }),
      step('New test'),
    ];
    const again = 'signed already; it stays as it was signed, and is done again by this revision';
    expect(
      stepDifferences('TR-00001', traveler, route).map(({ area, change, where, what, consequences }) => [
        area,
        change,
        where,
        what,
        ...consequences,
      ]),
    ).toEqual([
      ['step', 'removed', 'TR-00001', 'Old test'],
      ['step', 'removed', 'TR-00001', 'Old polish', 'signed already; it stays as it was signed'],
      ['limit', 'changed', 'TR-00001, Measure blade', 'width'],
      ['limit', 'changed', 'TR-00001, Measure shank', 'width', again],
      ['step', 'added', 'TR-00001', 'New test'],
    ]);
  });

  it('says nothing when nothing differs', () => {
    expect(stepDifferences('TR-00001', [now('Clean', 'open')], [step('Clean')])).toEqual([]);
  });
});

describe('life limits of two revisions', () => {
  const limit = (hoursTenths: number | null, cycles: number | null, overhauls: number | null = null) => ({
    ...{ hoursTenths, cycles, overhauls },
  });

  it('are told part by part: new, changed or gone, with where the part is fitted', () => {
    const before = new Map([
      ['Q76-B', limit(60_000, 1)],
      ['SAME', limit(10, null)],
      ['OLD', limit(null, 900)],
    ]);
    const after = new Map([
      ['Q76-B', limit(50_000, null)],
      ['SAME', limit(10, null)],
      ['HUB', limit(null, 700, 5)],
    ]);
    const fitted = new Map([['Q76-B', ['blade 1, serial B1', 'blade 2, serial not read']]]);
    expect(
      lifeDifferences(before, after, fitted).map(({ area, what, change, before: was, after: is, consequences }) => [
        ...[area, what, change, was, is, ...consequences],
      ]),
    ).toEqual([
      ['life', 'HUB', 'added', null, '700 cycles or 5 overhauls since new'],
      ['life', 'OLD', 'removed', '900 cycles since new', null],
      [
        ...['life', 'Q76-B', 'changed', '6,000.0 h or 1 cycle since new', '5,000.0 h since new'],
        'fitted here: blade 1, serial B1, blade 2, serial not read; release goes by it',
      ],
    ]);
  });
});
