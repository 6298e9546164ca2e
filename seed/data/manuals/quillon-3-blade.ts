// size: tables of data, one entry a line
import { angles, leakTest, playAndTravel, stop } from './build-sheets.ts';
import { apart, asNeeded, sealsAndLocks, takenOffAndPutBack, wearParts } from './quillon-3-blade-kit.ts';
import {
  type ContentSeed,
  cautions,
  dimension,
  greased,
  inspected,
  limit,
  line,
  masked,
  measured,
  nuts,
  perBlade,
  torqued,
  work,
} from './shapes.ts';
import { staticBalance, weightsFound } from './static-balance.ts';

// Demonstration data, not for use on aircraft: every number here is invented.
const overhaul = ['overhaul', 'inspect-and-repair', 'strike-inspection'] as const;
const wired = { safety: 'safety wire' } as const;
const torques = [
  torqued('Torque hub nuts and stop', 40, {
    unit: 'ft-lb',
    instruction: 'Crosswise, half of the torque first.',
    groups: [
      nuts('hub nut', 12, { low: '48', high: '54', order: [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12], ...wired }),
      nuts('low pitch stop lock nut', 1, { low: '28', high: '32', passes: ['100'], retorque: false, ...wired }),
    ],
  }),
  torqued('Torque clamp nuts', 25, {
    unit: 'in-lb',
    materials: ['LM-AS1'],
    groups: [1, 2, 3].map((n) =>
      nuts(`blade ${n} clamp nut`, 2, { low: '290', high: '310', threads: 'anti-seize LM-AS1, thin' }),
    ),
  }),
];
const build = [
  work('Assemble hub, pitch change and blades', 'assembly', 240, {
    phase: 'build',
    fact: 'reassembled',
    instruction: 'Nuts, pins and seals new. Race halves as the matched sets they came in.',
  }),
  ...torques,
  greased(3, '40.0', '44.0'),
  work('Set blade angles', 'blade-angles', 60, {
    phase: 'build',
    instrumentKind: 'protractor',
    caution: cautions.cycling,
    instruction: 'At the reference station, for the application of this unit, cycled on air before it is read.',
    ...angles(3, '30', {
      'Heronby Courser 4': [stop('low', ['13.2', '13.6'], '0.2'), stop('high', ['28.5', '29.5'], '0.5')],
      'Maddock Fieldmaster': [stop('low', ['12.4', '12.8'], '0.2'), stop('high', ['27.0', '28.0'], '0.5')],
      'Orrick Twinlark': [stop('low', ['13.2', '13.6'], '0.2'), stop('high', ['28.5', '29.5'], '0.5')],
    }),
  }),
  work('Leak test', 'leak-test', 40, {
    phase: 'build',
    instrumentKind: 'pressure-gauge',
    caution: cautions.pressure,
    fact: 'tested',
    ...leakTest(
      3,
      ['195', '205'],
      ['shank O-ring', 'piston O-ring', 'cylinder O-ring', 'pitch change rod O-ring', 'hub gasket'],
    ),
  }),
  work('Play, friction and travel', 'leak-test', 50, {
    phase: 'build',
    instrumentKind: 'dial-indicator',
    caution: cautions.cycling,
    instruction:
      'Each blade by hand in the four directions, at the reference station; then friction, then from stop to stop.',
    ...playAndTravel(3, ['20', '45']),
  }),
];
const balanceAndFinal = [
  staticBalance(90, {
    blades: 3,
    ring: { count: 6, from: 30, radius: '5.2', pieces: 6, stack: '0.400' },
    limit: { by: 'manual', moment: '45' },
    after: ['paint finished', 'boots on', 'decals on'],
  }),
  inspected('Final inspection', 'final-inspection', 60, { phase: 'final', caution: cautions.release }),
];

const widths = (tip: string, after = '') => [
  dimension('width', limit(`width at 18 in${after}`, 'in', '6.405'), '18'),
  dimension('width', limit(`width at 24 in${after}`, 'in', '6.180'), '24'),
  dimension('width', limit(`width at 30 in${after}`, 'in', '5.665'), '30'),
  dimension('width', limit(`width at 36 in${after}`, 'in', tip), '36'),
];
const thicknesses = [
  dimension('thickness', limit('thickness at 18 in', 'in', '0.985'), '18'),
  dimension('thickness', limit('thickness at 24 in', 'in', '0.702'), '24'),
  dimension('thickness', limit('thickness at 30 in', 'in', '0.488'), '30'),
  dimension('thickness', limit('thickness at 36 in', 'in', '0.301'), '36'),
];
const bladeLook = [
  work('Strip paint and clean', 'cleaning', 75, { fact: 'cleaned', caution: cautions.strippers, batched: true }),
  work('Penetrant test, whole blade', 'non-destructive-test', 45),
  work('Eddy-current test, shank and retention', 'non-destructive-test', 30, { instrumentKind: 'eddy-current-set' }),
];
const bladeRepair = (tip: string) => [
  work('Blend and polish', 'blade-repair', 150, { phase: 'repair', fact: 'repaired' }),
  measured('Measure after repair', 'dimensional-inspection', {
    standardMinutes: 30,
    phase: 'repair',
    instrumentKind: 'caliper',
    measures: widths(tip, ' after repair'),
  }),
  work('Penetrant test after blending', 'non-destructive-test', 30, { phase: 'repair' }),
  work('Roll and peen shank', 'shot-peening', 45, { phase: 'repair', caution: cautions.peening }),
  work('Conversion coat', 'coating', 30, { phase: 'repair', caution: cautions.plating, batched: true }),
  work('Paint, mating faces masked', 'coating', 50, { phase: 'repair', form: masked('butt face', 'bearing seat') }),
  inspected('Inspect blade for build', 'blade-repair', 20, { phase: 'repair' }),
];
const straightness = [
  dimension('face-alignment', limit('face alignment at 30 in', 'in', '-0.060', '0.060'), '30'),
  dimension('edge-alignment', limit('edge alignment at 30 in', 'in', '-0.100', '0.100'), '30'),
];
const bladeMeasure = (tip: string) =>
  measured('Measure blade by station', 'dimensional-inspection', {
    standardMinutes: 40,
    instrumentKind: 'caliper',
    instruction: 'Stations counted from the hub centre. Record what the gauge shows, never what it showed last time.',
    measures: [
      ...widths(tip),
      ...thicknesses,
      dimension('length', limit('length', 'in', '37.750', '38.000')),
      ...straightness,
    ],
  });
const shankMeasure = measured('Measure shank and retention', 'dimensional-inspection', {
  standardMinutes: 20,
  instrumentKind: 'micrometer',
  measures: [
    dimension('shank-diameter', limit('shank diameter', 'in', '3.8720', '3.8760')),
    limit('retention radius', 'in', '0.120', '0.135'),
  ],
});

const hubRoute = [
  work('Clean and strip', 'cleaning', 60, { fact: 'cleaned', caution: cautions.strippers, batched: true }),
  work('Magnetic particle test, demagnetise', 'non-destructive-test', 45),
  measured('Measure bores and sockets', 'dimensional-inspection', {
    standardMinutes: 35,
    instrumentKind: 'micrometer',
    measures: [
      ...perBlade(3, (n) => [limit(`blade socket ${n} diameter`, 'in', '4.1240', '4.1275')]),
      limit('pilot bore diameter', 'in', '2.2500', '2.2520'),
      limit('mounting face flatness', 'in', undefined, '0.0015'),
    ],
  }),
  work('Magnetic particle test, arms, after the event', 'non-destructive-test', 40, {
    events: ['strike', 'lightning'],
  }),
  inspected('Inspect hub', 'dimensional-inspection', 25, { fact: 'inspected' }),
  work('Blend corrosion within limits', 'blade-repair', 45, { phase: 'repair', fact: 'repaired' }),
  work('Plate and bake', 'plating', 60, { phase: 'repair', caution: cautions.plating }),
];
const smallSerialized = (what: string, bore: string[]) => [
  work('Clean', 'cleaning', 25, { fact: 'cleaned', caution: cautions.strippers }),
  work('Crack test', 'non-destructive-test', 25),
  measured(`Measure ${what}`, 'dimensional-inspection', {
    standardMinutes: 15,
    instrumentKind: 'micrometer',
    measures: [limit(`${what} diameter`, 'in', bore[0], bore[1])],
  }),
  inspected(`Inspect ${what}`, 'dimensional-inspection', 10, { fact: 'inspected' }),
];

/** Quillon Q3C-76: three aluminium blades, constant speed. Revision 5 tightens a width limit and puts a felt dust seal on the piston. */
export function quillon3Blade(revision: '4' | '5'): ContentSeed {
  const felt = revision === '5' ? [line('Q301-17', 'piston dust seal', 1, { ...apart, serialFrom: 'QA1400' })] : [];
  const evaluation = [
    work('Discharge, mark positions, remove weights and spinner', 'teardown', 40, {
      caution: cautions.charge,
      form: weightsFound,
    }),
    work('Take apart', 'teardown', 110, { fact: 'disassembled', caution: cautions.charge }),
    work('Clean small parts', 'cleaning', 45, { fact: 'cleaned' }),
    inspected('Inspect small parts', 'dimensional-inspection', 40, { fact: 'inspected' }),
  ];
  const reseal = [
    ...evaluation.slice(0, 3),
    inspected('Inspect small parts', 'dimensional-inspection', 20, { fact: 'inspected' }),
  ];
  const tipWidth = revision === '5' ? '4.402' : '4.390';
  const bladeSteps = [...bladeLook, bladeMeasure(tipWidth), shankMeasure];
  return {
    kitList: [...sealsAndLocks, ...felt, ...wearParts, ...takenOffAndPutBack, ...asNeeded],
    routes: [
      {
        partClass: 'assembly',
        title: 'Propeller, apart and together',
        scopes: [...overhaul],
        steps: [
          ...evaluation,
          work('Repair or replace small parts as found', 'assembly', 30, { phase: 'repair', fact: 'repaired' }),
          ...build,
          ...balanceAndFinal,
        ],
      },
      {
        partClass: 'assembly',
        title: 'Propeller, reseal',
        scopes: ['reseal'],
        steps: [...reseal, ...build, ...balanceAndFinal],
      },
      { partClass: 'assembly', title: 'Propeller, balance only', scopes: ['balance-only'], steps: balanceAndFinal },
      { partClass: 'hub', title: 'Steel hub', material: 'steel', scopes: [...overhaul], steps: hubRoute },
      {
        partClass: 'hub',
        title: 'Hub, look over',
        scopes: ['reseal'],
        steps: [inspected('Look over hub', 'dimensional-inspection', 15)],
      },
      {
        partClass: 'blade',
        title: 'Aluminium blade',
        material: 'aluminium',
        scopes: ['overhaul', 'inspect-and-repair'],
        steps: [
          ...bladeSteps,
          inspected('Inspect blade', 'dimensional-inspection', 20, { fact: 'inspected' }),
          ...bladeRepair(tipWidth),
        ],
      },
      {
        partClass: 'blade',
        title: 'Aluminium blade after a strike',
        scopes: ['strike-inspection'],
        steps: [
          ...bladeSteps,
          measured('Measure bend', 'dimensional-inspection', {
            standardMinutes: 30,
            instrumentKind: 'protractor',
            instruction: 'Bend angle against distance from the hub: beyond the chart there is no straightening.',
            measures: [limit('bend angle at 24 in', 'degrees', undefined, '3.5')],
          }),
          inspected('Inspect blade', 'dimensional-inspection', 30, { fact: 'inspected' }),
          ...bladeRepair(tipWidth),
        ],
      },
      {
        partClass: 'blade',
        title: 'Blade, look over',
        scopes: ['reseal'],
        steps: [inspected('Look over blade and shank', 'dimensional-inspection', 15)],
      },
      {
        partClass: 'clamp',
        title: 'Blade clamp',
        scopes: [...overhaul],
        steps: smallSerialized('clamp bore', ['3.9980', '4.0015']),
      },
      {
        partClass: 'piston',
        title: 'Piston',
        scopes: [...overhaul],
        steps: smallSerialized('piston', ['4.4920', '4.4955']),
      },
      {
        partClass: 'cylinder',
        title: 'Cylinder',
        scopes: [...overhaul],
        steps: smallSerialized('cylinder bore', ['4.5000', '4.5030']),
      },
    ],
    tboRules: [
      { hoursTenths: 20_000, months: 72, endOfMonth: false, requirement: 'recommended' },
      {
        airframe: 'Maddock Fieldmaster',
        hoursTenths: 15_000,
        months: 48,
        endOfMonth: false,
        requirement: 'recommended',
      },
      { airframe: 'Orrick Twinlark', hoursTenths: 20_000, months: 60, endOfMonth: true, requirement: 'required' },
    ],
  };
}
