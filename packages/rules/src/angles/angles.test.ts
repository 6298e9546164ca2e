import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  type AngleReading,
  type AnglesAsked,
  acceptedAngles,
  anglesFor,
  judgeAngle,
  judgeAngles,
  sayAngles,
} from './index.ts';

const table = {
  blades: 3,
  station: { at: '30', unit: 'in' },
  cycles: 10,
  protractor: { low: '-30', high: '100' },
  applications: [
    {
      applicationId: 'charter',
      stops: [
        { stop: 'low', low: '13.2', high: '13.6', spread: '0.2' },
        { stop: 'reverse', low: '-11.5', high: '-10.5' },
      ],
    },
  ],
} as const;
const asked = anglesFor(table, 'charter') as AnglesAsked;
const three = (low: readonly string[], reverse: readonly string[] = ['-11', '-11', '-11']): AngleReading[] => [
  ...low.map((angle, index) => ({ blade: index + 1, stop: 'low' as const, angle })),
  ...reverse.map((angle, index) => ({ blade: index + 1, stop: 'reverse' as const, angle })),
];
const judged = (readings: AngleReading[], cycles = 10) => judgeAngles({ cycles, readings }, asked);

describe('blade angles', () => {
  it('at the very limits and the very spread are good', () => {
    expect(judged(three(['13.4', '13.5', '13.6'], ['-11.5', '-10.5', '-11']))).toEqual({
      ...{ good: true, reasons: [] },
      spreads: [
        { stop: 'low', spread: '0.2', good: true },
        { stop: 'reverse', spread: '1', good: true },
      ],
    });
  });
  it('outside are named by blade, stop and how far, below zero too', () => {
    expect(judged(three(['13.1', '13.3', '13.25'], ['-11', '-10.3', '-11.6'])).reasons).toEqual([
      'Blade 1 at the low stop: 13.1°; 13.2° to 13.6° is asked for, 0.1° too little.',
      'Blade 2 at the reverse stop: -10.3°; -11.5° to -10.5° is asked for, 0.2° too much.',
      'Blade 3 at the reverse stop: -11.6°; -11.5° to -10.5° is asked for, 0.1° too little.',
    ]);
  });
  it('each within its limits may still differ too much', () => {
    expect(judged(three(['13.2', '13.4', '13.45'])).reasons).toEqual([
      'The blades differ by 0.25° at the low stop; 0.2° is allowed, 0.05° too much.',
    ]);
  });
  it('are judged in decimals: a spread is within exactly when whole hundredths say so', () => {
    const hundredths = fc.integer({ min: 1320, max: 1360 });
    fc.assert(
      fc.property(fc.tuple(hundredths, hundredths, hundredths), (read) => {
        const verdict = judged(three(read.map((one) => (one / 100).toFixed(2))));
        expect(verdict.good).toBe(Math.max(...read) - Math.min(...read) <= 20);
      }),
    );
  });
  it('are said in a line a stop, with station and cycles', () => {
    const readings = three(['13.4', '13.5', '13.6']);
    const said = sayAngles({ cycles: 12, readings }, asked, judged(readings, 12));
    expect(said.map(({ value }) => value)).toEqual([
      '30 in',
      '12 times, 10 asked for',
      'blade 1 13.4°, blade 2 13.5°, blade 3 13.6° (13.2° to 13.6°), spread 0.2°, 0.2° allowed',
      'blade 1 -11°, blade 2 -11°, blade 3 -11° (-11.5° to -10.5°), spread 0°',
    ]);
  });
  it('are those of one application, and of no other', () => {
    expect(anglesFor(table, 'other')).toBeUndefined();
    expect(anglesFor(table, null)).toBeUndefined();
  });
  it('are accepted inside the limits by the doubt of the protractor, where the shop asks for it', () => {
    const narrowed = acceptedAngles(asked, { uncertainty: '0.05', unit: 'degrees' }, 'uncertainty');
    expect(narrowed.stops).toEqual([
      { stop: 'low', low: '13.25', high: '13.55', spread: '0.15' },
      { stop: 'reverse', low: '-11.45', high: '-10.55' },
    ]);
    expect(acceptedAngles(asked, { uncertainty: '0.05', unit: 'degrees' }, 'none')).toBe(asked);
    expect(() => acceptedAngles(asked, { uncertainty: '0.5', unit: 'degrees' }, 'uncertainty')).toThrow(
      /measure better/,
    );
  });
});

describe('what is no reading of a blade is refused at its place', () => {
  const radians = (degrees: number) => ((degrees * Math.PI) / 180).toFixed(4);
  it.each<[string, AngleReading[], number, string, string]>([
    ['fewer cycles than asked', three(['13.4', '13.4', '13.4']), 9, 'cycles-short', 'cycles'],
    ['a blade not read', three(['13.4', '13.4']), 10, 'blade-missing', 'readings'],
    ['a stop not read', three(['13.4', '13.4', '13.4'], []), 10, 'blade-missing', 'readings'],
    ['a fourth blade', three(['13.4', '13.4', '13.4', '13.4']), 10, 'blade-unknown', 'readings/3/blade'],
    ['what no protractor shows', three(['13.4', '104', '13.4']), 10, 'outside-protractor', 'readings/1/angle'],
    ['minutes of arc', three([String(13.4 * 60), '13.4', '13.4']), 10, 'outside-protractor', 'readings/0/angle'],
    ['radians', three([radians(13.4), '13.4', '13.4']), 10, 'reading-impossible', 'readings/0/angle'],
    [
      'radians below zero',
      three(['13.4', '13.4', '13.4'], ['-11', radians(-11), '-11']),
      ...([10, 'reading-impossible', 'readings/4/angle'] as const),
    ],
    ['no number', three(['13,4', '13.4', '13.4']), 10, 'not-a-number', 'readings/0/angle'],
  ])('%s', (_, readings, cycles, code, path) => {
    expect(() => judged(readings, cycles)).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
  });
  it('a blade twice, and a stop the application does not have', () => {
    const [first, ...rest] = three(['13.4', '13.4', '13.4']);
    expect(() => judged([first as AngleReading, first as AngleReading, ...rest])).toThrow(/twice/);
    expect(() => judgeAngle({ blade: 1, stop: 'feather', angle: '84' }, asked)).toThrow(/no feather stop/);
  });
  it('but a blade set on the wrong side of zero is a bad angle, not a misreading', () => {
    expect(judgeAngle({ blade: 1, stop: 'reverse', angle: '2' }, asked)).toEqual({ state: 'outside', by: '12.5' });
  });
});
