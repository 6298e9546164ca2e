import { type ContentSeed, cautions, dimension, inspected, limit, line, measured, work } from './shapes.ts';
import { staticBalance } from './static-balance.ts';

// Demonstration data, not for use on aircraft: every number here is invented.
const measures = (after: string) =>
  [1, 2].flatMap((n) => [
    limit(`blade ${n} width at 20 in${after}`, 'in', '5.210'),
    limit(`blade ${n} width at 30 in${after}`, 'in', '3.870'),
    limit(`blade ${n} thickness at 20 in${after}`, 'in', '0.610'),
  ]);

const recondition = [
  work('Strip paint and clean', 'cleaning', 50, { fact: 'cleaned', caution: cautions.strippers }),
  work('Penetrant test, whole propeller', 'non-destructive-test', 40),
  measured('Measure bend', 'dimensional-inspection', {
    standardMinutes: 20,
    instrumentKind: 'protractor',
    events: ['strike'],
    measures: [
      dimension('bend-distance', limit('bend, distance from the hub', 'in', '8.0', '35.0')),
      {
        ...{ name: 'bend angle', unit: 'degrees', decimals: 1, method: 'absolute', byDiameter: [], oversizes: [] },
        dimension: 'bend-angle',
        chart: {
          by: 'bend, distance from the hub',
          points: [
            { at: '8.0', most: '0.0' },
            { at: '20.0', most: '4.0' },
            { at: '35.0', most: '18.0' },
          ],
        },
      },
    ],
  }),
  measured('Measure by station', 'dimensional-inspection', {
    standardMinutes: 30,
    instrumentKind: 'caliper',
    measures: measures(''),
  }),
  inspected('Inspect propeller', 'dimensional-inspection', 15, { fact: 'inspected' }),
  work('Blend, polish and repitch', 'blade-repair', 140, {
    phase: 'repair',
    fact: 'repaired',
    instruction: 'To the pitch this installation is approved with.',
  }),
  measured('Measure pitch and track', 'dimensional-inspection', {
    phase: 'repair',
    standardMinutes: 40,
    instrumentKind: 'protractor',
    measures: [
      limit('pitch, blade 1', 'in', '55.5', '56.5'),
      limit('pitch, blade 2', 'in', '55.5', '56.5'),
      limit('track', 'in', undefined, '0.062'),
    ],
  }),
  measured('Measure after repair', 'dimensional-inspection', {
    phase: 'repair',
    standardMinutes: 25,
    instrumentKind: 'caliper',
    measures: measures(' after repair'),
  }),
  work('Penetrant test after blending', 'non-destructive-test', 30, { phase: 'repair' }),
  work('Anodise and paint', 'coating', 60, { phase: 'repair', caution: cautions.plating, waitMinutes: 720 }),
  {
    // One piece has no places for weights: what is heavy is worked off as the manual says.
    ...staticBalance(45, {
      blades: 2,
      limit: { by: 'manual', moment: '36' },
      after: ['paint finished', 'decals on'],
    }),
    fact: 'tested' as const,
  },
  inspected('Final inspection', 'final-inspection', 30, { phase: 'final', caution: cautions.release }),
];

/** Quillon QX-70: one piece of aluminium, two blades, fixed pitch. */
export function quillonFixedPitch(): ContentSeed {
  const scopes: ('fixed-pitch' | 'strike-inspection')[] = ['fixed-pitch', 'strike-inspection'];
  return {
    kitList: [
      line('Q101-31', 'mounting bolt nuts', 6, { scopes }),
      line('Q101-33', 'crush plate washers', 6, { scopes }),
      line('LM-SW32', 'safety wire', 40, { scopes, minimum: 8 }),
    ],
    routes: [
      { partClass: 'assembly', title: 'Fixed-pitch propeller', material: 'aluminium', scopes, steps: recondition },
    ],
    tboRules: [{ hoursTenths: 20_000, months: 72, endOfMonth: false, requirement: 'recommended' }],
  };
}
