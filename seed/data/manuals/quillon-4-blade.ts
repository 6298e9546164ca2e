// size: tables of data, one entry a line
import { angles, leakTest, playAndTravel, stop } from './build-sheets.ts';
import {
  type ContentSeed,
  cautions,
  dimension,
  greased,
  inspected,
  limit,
  line,
  type MeasureSeed,
  masked,
  measured,
  nuts,
  perBlade,
  torqued,
  wheneverApart,
  work,
} from './shapes.ts';
import { bladeMoment, staticBalance, weightsFound } from './static-balance.ts';

// Demonstration data, not for use on aircraft: every number here is invented.
const apart = { scopes: wheneverApart };
const balanced = [...wheneverApart, 'balance-only' as const];
const blade = { per: 'blade', scopes: wheneverApart } as const;
const reused = { source: 'reused', scopes: wheneverApart } as const;
const either = { source: 'any', scopes: wheneverApart } as const;
const overhaul = ['overhaul', 'inspect-and-repair', 'strike-inspection'] as const;

const kitList = [
  line('Q401-11', 'shank O-ring', 2, blade),
  line('Q401-12', 'piston O-ring', 1, apart),
  line('Q401-13', 'cylinder O-ring', 2, apart),
  line('Q401-15', 'hub gasket', 1, apart),
  line('Q401-16', 'mounting face O-ring', 1, apart),
  line('Q301-31', 'hub nuts', 16, apart),
  line('Q301-33', 'pitch link cotter pin', 1, blade),
  line('Q301-36', 'clamp nuts', 2, blade),
  line('Q301-37', 'clamp washers', 4, blade),
  line('Q401-26', 'cylinder retaining ring', 1, apart),
  line('Q401-21', 'retention bearing balls', 30, { per: 'blade' }),
  line('Q401-24', 'pitch link bushing', 2, { per: 'blade' }),
  line('Q301-41', 'grease fitting', 1, { per: 'blade' }),
  line('Q301-42', 'grease fitting cap', 1, { per: 'blade' }),
  line('Q401-51', 'feathering spring', 1, reused),
  line('Q401-32', 'hub bolts', 16, reused),
  line('Q401-35', 'clamp bolts', 2, { ...reused, per: 'blade' }),
  line('Q401-53', 'pitch link', 1, { ...either, per: 'blade' }),
  line('Q401-22', 'retention race halves', 2, { ...either, per: 'blade' }),
  line('Q401-61', 'hub', 1, either),
  line('Q401-64', 'clamp', 1, { ...either, per: 'blade' }),
  ...[1, 2, 3, 4].map((n) => line('Q84-B', `blade ${n}`, 1, either)),
  line('LM-SW41', 'safety wire', 240, { ...apart, minimum: 36 }),
  line('LM-GR6', 'grease', 640, { ...apart, minimum: 180 }),
  line('Q-SHIM-05', 'preload shims 0.005', 3, { minimum: 0, per: 'blade' }),
  line('Q-BW-1', 'static balance washers', 24, { scopes: balanced, minimum: 0 }),
];

/** Limits in two bands of the current diameter: a shorter propeller needs more blade left towards its tip. */
function byDiameter(given: MeasureSeed, shorter: string): MeasureSeed {
  const { low, ...rest } = given;
  return {
    ...rest,
    byDiameter: [
      { from: '82.0', to: '82.9', low: shorter },
      { from: '83.0', to: '84.0', low: low ?? shorter },
    ],
  };
}
const at = (station: string, name: string, given: MeasureSeed) =>
  dimension(name as Parameters<typeof dimension>[0], given, station);

const widths = (after: string) => [
  at('18', 'width', limit(`width at 18 in${after}`, 'in', '7.105')),
  at('24', 'width', limit(`width at 24 in${after}`, 'in', '6.940')),
  at('30', 'width', limit(`width at 30 in${after}`, 'in', '6.510')),
  at('36', 'width', byDiameter(limit(`width at 36 in${after}`, 'in', '5.480'), '5.560')),
  at('39', 'width', byDiameter(limit(`width at 39 in${after}`, 'in', '4.305'), '4.420')),
];
const thicknesses = (after: string) => [
  at('18', 'thickness', limit(`thickness at 18 in${after}`, 'in', '1.120')),
  at('24', 'thickness', limit(`thickness at 24 in${after}`, 'in', '0.815')),
  at('30', 'thickness', limit(`thickness at 30 in${after}`, 'in', '0.560')),
  at('36', 'thickness', byDiameter(limit(`thickness at 36 in${after}`, 'in', '0.352'), '0.366')),
  at('39', 'thickness', byDiameter(limit(`thickness at 39 in${after}`, 'in', '0.288'), '0.301')),
];
const shape = (after: string) => [
  ...['24', '36'].flatMap((station) => [
    at(station, 'twist', limit(`twist at ${station} in${after}`, 'degrees', '-0.3', '0.3')),
    at(station, 'face-alignment', limit(`face alignment at ${station} in${after}`, 'in', '-0.060', '0.060')),
    at(station, 'edge-alignment', limit(`edge alignment at ${station} in${after}`, 'in', '-0.100', '0.100')),
  ]),
  dimension('length', lengthByDiameter(after)),
];
function lengthByDiameter(after: string): MeasureSeed {
  const { low: _low, high: _high, ...rest } = limit(`length${after}`, 'in', '41.950', '42.000');
  return {
    ...rest,
    byDiameter: [
      { from: '82.0', to: '82.0', low: '40.950', high: '41.000' },
      { from: '83.0', to: '83.0', low: '41.450', high: '41.500' },
      { from: '84.0', to: '84.0', low: '41.950', high: '42.000' },
    ],
  };
}

const measureBlade = (title: string, after: string, phase: 'evaluation' | 'repair') =>
  measured(title, 'dimensional-inspection', {
    phase,
    standardMinutes: 50,
    instrumentKind: 'caliper',
    instruction: 'Stations counted from the hub centre. Record what the gauge shows, never what it showed last time.',
    measures: [...widths(after), ...thicknesses(after), ...shape(after)],
  });
const shank = measured('Measure shank and retention', 'dimensional-inspection', {
  standardMinutes: 25,
  instrumentKind: 'micrometer',
  measures: [
    dimension('shank-diameter', limit('shank diameter', 'in', '4.2460', '4.2500')),
    dimension('retention-diameter', limit('retention diameter', 'in', '5.1180', '5.1220')),
    dimension('bore-diameter', {
      ...limit('shank bush bore', 'in', '2.1240', '2.1260'),
      oversizes: [
        { step: '+0.010', low: '2.1340', high: '2.1360' },
        { step: '+0.020', low: '2.1440', high: '2.1460' },
      ],
    }),
  ],
});
const bend = measured('Measure bend', 'dimensional-inspection', {
  standardMinutes: 30,
  instrumentKind: 'protractor',
  events: ['strike'],
  instruction: 'Bend angle against distance from the hub: beyond the chart there is no straightening.',
  measures: [
    { ...dimension('bend-distance', limit('bend, distance from the hub', 'in', '10.0', '42.0')) },
    {
      ...{ name: 'bend angle', unit: 'degrees', decimals: 1, method: 'absolute', byDiameter: [], oversizes: [] },
      dimension: 'bend-angle',
      chart: {
        by: 'bend, distance from the hub',
        points: [
          { at: '10.0', most: '0.0' },
          { at: '18.0', most: '2.0' },
          { at: '24.0', most: '5.5' },
          { at: '30.0', most: '9.0' },
          { at: '36.0', most: '14.0' },
          { at: '42.0', most: '20.0' },
        ],
      },
    },
  ],
});
const bladeRoute = [
  work('Strip paint and clean', 'cleaning', 80, {
    fact: 'cleaned',
    caution: cautions.strippers,
    batched: true,
    equipmentKind: 'strip-tank',
    form: [
      { name: 'bath temperature', unit: '°F' },
      { name: 'time in the bath', unit: 'minutes' },
    ],
  }),
  work('Etch and penetrant test, whole blade', 'non-destructive-test', 50, {
    equipmentKind: 'penetrant-line',
    form: [{ name: 'penetrant family' }],
  }),
  work('Eddy-current test, shank and retention', 'non-destructive-test', 35, {
    instrumentKind: 'eddy-current-set',
    sheet: {
      ...{ kind: 'eddy-current', frequency: { low: '200', high: '300', unit: 'kHz' }, notchDepth: '0.020', unit: 'in' },
      ...{ signal: { low: '70', high: '90' }, drift: '10' },
    },
  }),
  measureBlade('Measure blade by station', '', 'evaluation'),
  shank,
  bend,
  inspected('Inspect blade', 'dimensional-inspection', 25, { fact: 'inspected' }),
  work('Shorten blade to the new diameter', 'blade-repair', 90, { phase: 'repair', whenShortened: true }),
  work('Blend and polish', 'blade-repair', 170, { phase: 'repair', fact: 'repaired' }),
  measureBlade('Measure after repair', ' after repair', 'repair'),
  work('Penetrant test after blending', 'non-destructive-test', 35, {
    ...{ phase: 'repair', equipmentKind: 'penetrant-line' },
  }),
  work('Peen edges and shank', 'shot-peening', 50, {
    phase: 'repair',
    caution: cautions.peening,
    instruction: 'Between strips: one set before the first blade of the lot, one after the last.',
    peening: {
      mediaSize: 'S170',
      coverage: 100,
      areas: [
        { name: 'leading edge', strip: 'A', low: '0.0080', high: '0.0110', unit: 'in', positions: ['12', '24', '36'] },
        { name: 'trailing edge', strip: 'A', low: '0.0060', high: '0.0090', unit: 'in', positions: ['12', '24', '36'] },
        { name: 'shank', strip: 'A', low: '0.0090', high: '0.0120', unit: 'in', positions: ['4'] },
      ],
    },
  }),
  work('Anodise', 'coating', 40, {
    phase: 'repair',
    caution: cautions.plating,
    batched: true,
    equipmentKind: 'anodise-tank',
    form: [{ name: 'current density', unit: 'A/ft²' }],
  }),
  work('Paint, mating faces masked', 'coating', 60, {
    phase: 'repair',
    form: [
      { name: 'paint lot' },
      { name: 'humidity', unit: '%' },
      ...masked('butt face', 'pitch-change pin', 'bearing seat'),
    ],
  }),
  bladeMoment('397.0', '399.0'),
  inspected('Inspect blade for build', 'blade-repair', 20, { phase: 'repair' }),
];

const evaluation = [
  work('Discharge, mark positions, remove weights and spinner', 'teardown', 50, {
    caution: cautions.charge,
    form: weightsFound,
  }),
  work('Take apart', 'teardown', 140, { fact: 'disassembled', caution: cautions.charge }),
  work('Clean small parts', 'cleaning', 60, { fact: 'cleaned' }),
  inspected('Inspect small parts', 'dimensional-inspection', 50, { fact: 'inspected' }),
];
export const chargeCylinder = work('Charge the cylinder', 'leak-test', 50, {
  phase: 'build',
  instrumentKind: 'pressure-gauge',
  caution: cautions.charging,
  instruction: 'By the temperature of the cylinder, not of the room; read again once the gas has come to it.',
  sheet: {
    ...{ kind: 'charge', medium: 'dry nitrogen', unit: 'psi', temperatureUnit: 'degF', tolerance: '2' },
    settleMinutes: 30,
    table: [
      { at: '30', pressure: '70' },
      { at: '50', pressure: '74' },
      { at: '70', pressure: '78' },
      { at: '90', pressure: '82' },
      { at: '110', pressure: '86' },
    ],
  },
});
const buildAndFinal = [
  work('Assemble hub, pitch change and blades', 'assembly', 320, {
    phase: 'build',
    fact: 'reassembled',
    instruction: 'Nuts, pins and seals new. Race halves as the matched sets they came in.',
  }),
  torqued('Torque hub nuts', 45, {
    unit: 'ft-lb',
    instruction: 'Crosswise, half of the torque first.',
    groups: [
      nuts('hub nut', 16, {
        ...{ low: '52', high: '58', safety: 'safety wire' },
        order: [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16],
      }),
    ],
  }),
  torqued('Torque clamp nuts', 30, {
    unit: 'in-lb',
    materials: ['LM-AS1'],
    groups: [1, 2, 3, 4].map((n) =>
      nuts(`blade ${n} clamp nut`, 2, { low: '340', high: '360', threads: 'anti-seize LM-AS1, thin' }),
    ),
  }),
  greased(4, '44.0', '48.0'),
  work('Set blade angles', 'blade-angles', 80, {
    phase: 'build',
    instrumentKind: 'protractor',
    caution: cautions.cycling,
    instruction: 'At the reference station, for the application of this unit, cycled on air before it is read.',
    ...angles(4, '36', {
      'Orrick Stormcrane': [stop('low', ['15.8', '16.2'], '0.2'), stop('feather', ['86.0', '87.0'], '0.5')],
    }),
  }),
  work('Leak test', 'leak-test', 45, {
    phase: 'build',
    instrumentKind: 'pressure-gauge',
    caution: cautions.pressure,
    fact: 'tested',
    ...leakTest(4, ['215', '225'], ['shank O-ring', 'piston O-ring', 'cylinder O-ring', 'hub gasket']),
  }),
  work('Play, friction and travel', 'leak-test', 60, {
    phase: 'build',
    instrumentKind: 'dial-indicator',
    caution: cautions.cycling,
    instruction:
      'Each blade by hand in the four directions, at the reference station; then friction, then from stop to stop.',
    ...playAndTravel(4, ['25', '55']),
  }),
  chargeCylinder,
  staticBalance(110, {
    blades: 4,
    ring: { count: 8, from: 22.5, radius: '5.6', pieces: 6, stack: '0.400' },
    limit: { by: 'manual', moment: '45' },
    after: ['paint finished', 'boots on', 'decals on'],
  }),
  inspected('Final inspection', 'final-inspection', 70, { phase: 'final', caution: cautions.release }),
];
const hubRoute = [
  work('Clean and strip', 'cleaning', 70, { fact: 'cleaned', caution: cautions.strippers }),
  work('Magnetic particle test, demagnetise', 'non-destructive-test', 55, { equipmentKind: 'magnetic-bench' }),
  measured('Measure bores and sockets', 'dimensional-inspection', {
    standardMinutes: 45,
    instrumentKind: 'micrometer',
    measures: perBlade(4, (n) => [
      dimension('bore-diameter', {
        ...limit(`blade socket ${n} diameter`, 'in', '4.5010', '4.5045'),
        oversizes: [{ step: '+0.005', low: '4.5060', high: '4.5095' }],
      }),
    ]),
  }),
  inspected('Inspect hub', 'dimensional-inspection', 30, { fact: 'inspected' }),
  work('Plate and bake', 'plating', 70, { phase: 'repair', caution: cautions.plating }),
];
const clampRoute = [
  work('Clean', 'cleaning', 25, { fact: 'cleaned', caution: cautions.strippers }),
  work('Magnetic particle test', 'non-destructive-test', 25, { equipmentKind: 'magnetic-bench' }),
  inspected('Inspect clamp', 'dimensional-inspection', 15, { fact: 'inspected' }),
  work('Cadmium plate and bake at the plater', 'plating', 15, { phase: 'repair', outside: true }),
];

const counterweightRoute = [
  work('Clean and strip old plating', 'cleaning', 30, { fact: 'cleaned', caution: cautions.strippers }),
  work('Magnetic particle test, demagnetise', 'non-destructive-test', 25, { equipmentKind: 'magnetic-bench' }),
  inspected('Inspect counterweight', 'dimensional-inspection', 10, { fact: 'inspected' }),
  work('Cadmium plate', 'plating', 40, {
    phase: 'repair',
    caution: cautions.plating,
    equipmentKind: 'cadmium-tank',
    form: [{ name: 'current density', unit: 'A/ft²' }],
  }),
  // The clock of the bake starts at the end of plating; figures of a process specification, here as demonstration data.
  work('Relief bake', 'plating', 20, {
    phase: 'repair',
    batched: true,
    instruction:
      'Within the time named after plating; the chart goes with the signature, one for all parts of an oven load.',
    sheet: {
      kind: 'bake',
      startWithinMinutes: 240,
      low: '350',
      high: '400',
      unit: '°F',
      minimumMinutes: 1_380,
      dips: 'restart',
    },
  }),
  work('Chromate', 'plating', 15, { phase: 'repair', caution: cautions.plating }),
];

/** Quillon Q4F-84: four aluminium blades, feathering; may be shortened to 82 in, blades matched within the set. */
export function quillon4Blade(revision: '3' | '4'): ContentSeed {
  const extra = revision === '4' ? [line('Q301-43', 'mounting stud nuts', 8)] : [];
  const look = (what: string) => [inspected(`Look over ${what}`, 'dimensional-inspection', 15)];
  return {
    kitList: [...kitList, ...extra],
    routes: [
      {
        partClass: 'assembly',
        title: 'Propeller, apart and together',
        scopes: [...overhaul],
        steps: [
          ...evaluation,
          work('Repair or replace small parts as found', 'assembly', 40, { phase: 'repair', fact: 'repaired' }),
          ...buildAndFinal,
        ],
      },
      {
        partClass: 'assembly',
        title: 'Propeller, reseal',
        scopes: ['reseal'],
        steps: [...evaluation, ...buildAndFinal],
      },
      {
        partClass: 'assembly',
        title: 'Propeller, balance only',
        scopes: ['balance-only'],
        steps: buildAndFinal.slice(-2),
      },
      { partClass: 'hub', title: 'Steel hub', material: 'steel', scopes: [...overhaul], steps: hubRoute },
      { partClass: 'hub', title: 'Hub, look over', scopes: ['reseal'], steps: look('hub') },
      { partClass: 'blade', title: 'Aluminium blade', material: 'aluminium', scopes: [...overhaul], steps: bladeRoute },
      { partClass: 'blade', title: 'Blade, look over', scopes: ['reseal'], steps: look('blade and shank') },
      { partClass: 'clamp', title: 'Blade clamp', material: 'steel', scopes: [...overhaul], steps: clampRoute },
      {
        partClass: 'counterweight',
        title: 'Counterweight',
        material: 'steel',
        scopes: [...overhaul],
        steps: counterweightRoute,
      },
      {
        partClass: 'counterweight',
        title: 'Counterweight, look over',
        scopes: ['reseal'],
        steps: look('counterweight'),
      },
      { partClass: 'clamp', title: 'Clamp, look over', scopes: ['reseal'], steps: look('clamp') },
    ],
    tboRules: [
      { hoursTenths: 40_000, months: 72, endOfMonth: false, requirement: 'required' },
      { months: 60, endOfMonth: true, requirement: 'required', ageFromMonths: 240 },
    ],
    bladeRules: {
      diameters: [
        { diameter: '84.0', designation: 'Q4F-84' },
        { diameter: '83.0', designation: 'Q4F-84-1' },
        { diameter: '82.0', designation: 'Q4F-84-2' },
      ],
      setSpreads: [
        { dimension: 'width', station: '30', most: '0.120', among: 'set' },
        { dimension: 'width', station: '36', most: '0.080', among: 'opposite' },
        { dimension: 'length', most: '0.030', among: 'set' },
        { dimension: 'static-moment', most: '0.8', among: 'opposite' },
        { dimension: 'static-moment', most: '1.0', among: 'master', master: '398.0' },
      ],
      corrosion: [
        { partClass: 'blade', area: 'retention', class: 'light', may: ['repair', 'reject'] },
        { partClass: 'blade', area: 'retention', class: 'moderate', may: ['reject'] },
        { partClass: 'blade', area: 'retention', class: 'heavy', may: ['reject'] },
        { partClass: 'blade', area: 'shank', class: 'light', may: ['repair', 'reject'] },
        { partClass: 'blade', area: 'shank', class: 'moderate', may: ['repair', 'reject'] },
        { partClass: 'blade', area: 'shank', class: 'heavy', may: ['reject'] },
        { partClass: 'blade', area: 'bore', class: 'light', may: ['repair', 'reject'] },
        { partClass: 'blade', area: 'bore', class: 'moderate', may: ['reject'] },
        { partClass: 'blade', area: 'airfoil', class: 'light', may: ['serviceable', 'repair', 'reject'] },
        { partClass: 'blade', area: 'airfoil', class: 'moderate', may: ['repair', 'reject'] },
        { partClass: 'blade', area: 'airfoil', class: 'heavy', may: ['repair', 'reject'] },
      ],
      matchedSets: [1, 2, 3, 4].map((n) => ({ position: `blade ${n} race halves`, pieces: 2 })),
    },
  };
}
