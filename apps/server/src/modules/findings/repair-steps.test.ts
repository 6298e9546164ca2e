import { areas, mayRepair } from '@hubwright/contracts/findings/areas';
import { describe, expect, it } from '@jest/globals';
import { asOfNow, type Laid, placeOfRepair, stepsOfRepair } from './repair-steps.ts';

const laid = (sequence: number, phase: string, state = 'open', findingId: string | null = null): Laid => ({
  ...{
    id: `s${sequence}`,
    sequence,
    phase,
    state,
    findingId,
    title: `Step ${sequence}`,
    instruction: '',
    process: 'blade-repair',
  },
  ...{ level: 'perform', kind: 'measure', standardMinutes: 5, instrumentKind: 'caliper', caution: null, fact: null },
  ...{ branch: null, waitMinutes: 0, outside: false, batched: false, tools: [], attempt: 1, mostRepairs: 2 },
  form: [],
  peening: null,
  ...{ equipmentKind: null, materials: [] },
  sheet: null,
  measures: [
    {
      ...{ name: 'width', unit: 'in', decimals: 3, method: 'absolute', low: '6.180', high: null },
      ...{ dimension: 'width', station: '24', zone: null, chart: null, basis: null },
    },
  ],
});

describe('where the repair of a finding goes', () => {
  const route = [
    laid(1, 'evaluation', 'signed'),
    laid(2, 'evaluation', 'failed'),
    laid(3, 'evaluation'),
    laid(4, 'repair'),
    laid(5, 'final'),
  ];

  it('is behind all of evaluation, however early it was found', () => {
    expect(placeOfRepair(route, 's2')).toBe(3);
    expect(placeOfRepair(route, null)).toBe(3);
  });

  it('is behind what is signed already and behind earlier repairs', () => {
    const later = [
      laid(1, 'evaluation', 'signed'),
      laid(2, 'repair', 'open', 'f1'),
      laid(3, 'repair'),
      laid(4, 'final'),
    ];
    expect(placeOfRepair(later, null)).toBe(2);
    expect(placeOfRepair([laid(1, 'evaluation', 'signed'), laid(2, 'repair', 'signed'), laid(3, 'repair')], null)).toBe(
      2,
    );
  });

  it('is right behind a step that failed after evaluation', () => {
    expect(placeOfRepair([laid(1, 'evaluation', 'signed'), laid(2, 'build', 'failed'), laid(3, 'build')], 's2')).toBe(
      2,
    );
  });
});

describe('the steps of a repair', () => {
  const blend = { title: 'Blend', instruction: '', process: 'blade-repair', level: 'perform', standardMinutes: 20 };

  it('end with measuring again what failed', () => {
    const [first, again, ...rest] = stepsOfRepair([blend], laid(2, 'evaluation', 'failed'), 'F-0007');
    expect(rest).toEqual([]);
    expect(first).toMatchObject({ title: 'Blend', phase: 'repair', kind: 'work', fact: 'repaired' });
    expect(again).toMatchObject({
      title: 'Step 2, again after F-0007',
      phase: 'repair',
      instrumentKind: 'caliper',
      measures: [{ low: '6.180' }],
    });
  });

  it('measure again to the limits of the revision of now, also what was a repeat already', () => {
    const route = [
      { ...laid(1, 'evaluation'), title: 'Other step' },
      {
        ...laid(2, 'evaluation'),
        measures: laid(2, 'evaluation').measures.map((measure) => ({ ...measure, low: '6.200' })),
      },
    ];
    const failed = laid(2, 'evaluation', 'failed');
    expect(stepsOfRepair([], asOfNow(failed, route), 'F-0007')).toMatchObject([
      { title: 'Step 2, again after F-0007', phase: 'repair', measures: [{ low: '6.200' }] },
    ]);
    const repeat = { ...laid(9, 'repair', 'failed', 'f1'), title: 'Step 2, again after F-0007', attempt: 2 };
    expect(stepsOfRepair([], asOfNow(repeat, route), 'F-0009')).toMatchObject([
      { title: 'Step 2, again after F-0009', phase: 'repair', attempt: 3, measures: [{ low: '6.200' }] },
    ]);
    expect(asOfNow(failed, [])).toBe(failed);
  });

  it('keep a failed build test in the build', () => {
    expect(stepsOfRepair([], laid(2, 'build', 'failed'), 'F-0008')).toMatchObject([{ phase: 'build' }]);
  });
});

describe('a deformed hub', () => {
  // Common practice, no source.
  it('is never repaired in a critical area', () => {
    const critical = areas.hub.filter((area) => area.critical).map(({ code }) => code);
    expect(critical.length).toBeGreaterThan(0);
    expect(critical.filter((code) => mayRepair('hub', code, 'deformed'))).toEqual([]);
    expect(mayRepair('hub', 'outside', 'deformed')).toBe(true);
    expect(mayRepair('hub', 'blade-socket', 'corroded')).toBe(true);
    expect(mayRepair('hub', 'no such area', 'deformed')).toBe(false);
  });
});
