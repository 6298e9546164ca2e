// size: tables of data, one entry a line
import type { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import type { Sent } from '@hubwright/contracts/operation';

type Program = Omit<Sent<typeof governorOperations.issueGovernorProgram>, 'revisionId' | 'applicationId' | 'signature'>;
type Point = Program['points'][number];

// Demonstration data, not for use on aircraft: every number here is invented.
function point(
  name: string,
  kind: Point['kind'],
  limits: readonly [unit: Point['unit'], low: string | undefined, high?: string],
  more: Partial<Point> = {},
): Point {
  const [unit, low, high] = limits;
  const decimals = Math.max(...[low, high].map((text) => text?.split('.')[1]?.length ?? 0));
  return {
    ...{ name, kind, unit, decimals, method: 'absolute' },
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    ...more,
  };
}

const pump: readonly Point[] = [
  point('relief pressure', 'relief-pressure', ['psi', '275', '295'], { atRpm: '2000', channel: 'relief' }),
  point('pump capacity', 'pump-capacity', ['qt/min', '8.0', '11.0'], { atRpm: '2000', channel: 'flow' }),
  point('internal leakage', 'internal-leakage', ['qt/h', undefined, '6.0'], {
    atRpm: '2000',
    instruction: 'Control shaft at mid travel, drain collected for one minute.',
  }),
];
const oil = { kind: 'mineral, SAE 50', low: '150', high: '180', unit: 'degF', channel: 'oil' } as const;
const reliefShims = {
  what: 'relief valve shims',
  reopens: ['relief pressure', 'pump capacity', 'internal leakage'],
};
const lowScrew = { what: 'low speed stop screw', reopens: ['low speed stop'] };

function program(basis: string, high: readonly [string, string], more: Partial<Program> = {}): Program {
  const { points = [], adjustments = [], ...rest } = more;
  return {
    ...{ basis, rotation: 'clockwise', driveRatio: '0.895', oil },
    ...rest,
    points: [
      ...pump,
      point('high speed stop', 'high-stop', ['rpm', ...high], { channel: 'speed' }),
      point('low speed stop', 'low-stop', ['rpm', '1325', '1396'], { channel: 'speed' }),
      ...points,
    ],
    adjustments: [
      reliefShims,
      { what: 'high speed stop screw', reopens: ['high speed stop', 'low speed stop'] },
      lowScrew,
      ...adjustments,
    ],
  };
}

/** The same governor is another on each installation: stops by the engine's speed, and on the twin an unfeathering accumulator. */
export const governorPrograms: Readonly<Record<string, Program>> = {
  'Heronby Courser 4': program('VOM-14, table 501, row B-540 single', ['2408', '2425']),
  'Heronby Pinnace': program('VOM-14, table 501, row B-360', ['2408', '2425']),
  'Orrick Twinlark': program('VOM-14, table 501, row B-540 twin', ['2296', '2313'], {
    points: [
      point('speed-bias pickup', 'speed-bias', ['rpm', '2250', '2290'], {
        instruction: 'Synchroniser signal applied.',
      }),
      point('unfeathering valve opens', 'unfeather', ['psi', '95', '115']),
      point('accumulator precharge', 'accumulator', ['psi', '98', '108'], {
        instruction: 'Dry nitrogen, read at room temperature after ten minutes.',
      }),
    ],
    adjustments: [{ what: 'unfeathering valve seat', reopens: ['unfeathering valve opens', 'internal leakage'] }],
  }),
};
