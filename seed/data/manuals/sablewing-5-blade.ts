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
  perBlade,
  wheneverApart,
  work,
} from './shapes.ts';
import { staticBalance, weightsFound } from './static-balance.ts';

// Demonstration data, not for use on aircraft: every number here is invented.
const apart = { scopes: wheneverApart };
const blade = { per: 'blade', scopes: wheneverApart } as const;
const overhaul = ['overhaul', 'inspect-and-repair', 'strike-inspection'] as const;

const kitList = [
  line('S501-11', 'blade root O-ring', 2, blade),
  line('S501-12', 'piston O-ring', 1, apart),
  line('S501-15', 'hub cover gasket', 1, apart),
  line('S501-31', 'hub nuts', 20, apart),
  line('S501-21', 'blade root bearing cartridge', 1, { per: 'blade' }),
  line('S501-27', 'leading edge film', 1, { per: 'blade' }),
  line('S501-51', 'feathering spring', 1, { ...apart, source: 'reused' }),
  line('S501-61', 'hub', 1, { ...apart, source: 'any' }),
  ...[1, 2, 3, 4, 5].map((n) => line('S83-B', `blade ${n}`, 1, { ...apart, source: 'any' })),
  line('LM-SW32', 'safety wire', 220, { ...apart, minimum: 30 }),
  line('LM-GR6', 'grease', 500, { ...apart, minimum: 140 }),
  ...['02', '03', '05', '10'].map((size) =>
    line(`S-SHIM-${size}`, `preload shims 0.0${size}`, 4, { minimum: 0, per: 'blade' }),
  ),
  line('Q-BW-1', 'static balance washers', 24, { ...apart, minimum: 0 }),
];

/** Fields of the blade that are tapped as one, root to tip, each with the greatest void it may have. */
const zones: readonly [name: string, from: string, to: string, most: string][] = [
  ['A', '10.0', '18.0', '0.00'],
  ['B', '18.0', '26.0', '0.25'],
  ['C', '26.0', '34.0', '0.50'],
  ['D', '34.0', '41.5', '0.75'],
];
const sides = ['face', 'camber'] as const;
const chords = ['leading', 'middle', 'trailing'] as const;
const tapMap: MeasureSeed[] = zones.flatMap(([letter, from, to, most]) =>
  sides.flatMap((surface) =>
    chords.map((chord) => {
      const name = `${letter} ${surface} ${chord}`;
      return {
        ...dimension('tap-void', limit(`void in zone ${name}`, 'in²', undefined, most)),
        zone: { name, surface, chord, from, to },
      };
    }),
  ),
);
const tap = (title: string, phase: 'evaluation' | 'repair') =>
  measured(title, 'dimensional-inspection', {
    phase,
    standardMinutes: 60,
    instruction: 'Tap every zone; enter the largest void found in it, 0 where the sound stays clear.',
    measures: tapMap,
  });
/** The metal shield of the leading edge, tapped where it is bonded, and its rim, where a void lets water in. */
const shieldTap: MeasureSeed[] = zones.flatMap(([letter, from, to]) =>
  sides.flatMap((surface) =>
    [
      { name: `shield ${letter} ${surface}`, chord: 'leading' as const, most: '0.10' },
      { name: `rim ${letter} ${surface}`, chord: 'middle' as const, most: '0.00' },
    ].map(({ name, chord, most }) => ({
      ...dimension('tap-void', limit(`void at ${name}`, 'in²', undefined, most)),
      zone: { name, surface, chord, from, to },
    })),
  ),
);
const tapShield = (title: string, phase: 'evaluation' | 'repair') =>
  measured(title, 'dimensional-inspection', {
    phase,
    standardMinutes: 25,
    instruction: 'Tap on the shield and all around its rim; enter the largest void, 0 where the sound stays clear.',
    measures: shieldTap,
  });

/** In the middle of each zone, root to tip: moisture, and the resistance of paint and of the path to the hub. */
const electric: readonly [zone: string, station: string, moisture: string, path: string][] = [
  ['A', '14.0', '1.0', '10.0'],
  ['B', '22.0', '1.5', '20.0'],
  ['C', '30.0', '1.5', '35.0'],
  ['D', '37.5', '1.0', '50.0'],
];
const moisture = electric.map(([zone, station, most]) =>
  dimension('moisture', limit(`moisture, zone ${zone}`, '%', undefined, most), station),
);
const lightningPath = electric.map(([zone, station, , most]) =>
  dimension('resistance', limit(`lightning path, zone ${zone} to hub`, 'milliohm', undefined, most), station),
);
const paintResistance = electric.map(([zone]) => limit(`conductive paint, zone ${zone}`, 'ohm', '200', '2500'));

/** Figures of a repair procedure, here as demonstration data. */
const curing = (title: string, minimumMinutes: number) =>
  work(title, 'blade-repair', 30, {
    phase: 'repair',
    instruction: 'Under vacuum until it has cooled; the chart goes with the signature.',
    caution:
      'Ovens and heat blankets burn, and resin that cures too fast can smoke or catch fire: stay with it as the approved procedure says.',
    sheet: {
      ...{ kind: 'cure', unit: '°F', low: '240', high: '260', minimumMinutes, dips: 'restart' },
      ...{ heatUpMost: '5', coolDownMost: '5', overMinutes: 10, coolTo: '140', vacuum: { least: '22', unit: 'inHg' } },
    },
  });

const bladeEvaluation = [
  work('Clean, no solvent soak', 'cleaning', 60, { fact: 'cleaned', caution: cautions.strippers }),
  tap('Tap map', 'evaluation'),
  tapShield('Erosion shield, tap on and around it', 'evaluation'),
  measured('Moisture by zone', 'dimensional-inspection', { standardMinutes: 15, measures: moisture }),
  measured('Lightning path by zone', 'dimensional-inspection', {
    ...{ standardMinutes: 20, instrumentKind: 'ohmmeter', measures: lightningPath },
  }),
  work('Ultrasonic test, root and erosion shield bond', 'non-destructive-test', 60),
  work('Ultrasonic test, spar, after the event', 'non-destructive-test', 70, { events: ['strike', 'lightning'] }),
  inspected('Inspect blade', 'dimensional-inspection', 30, { fact: 'inspected' }),
];
const bladeRoute = [
  ...bladeEvaluation,
  work('Sand and prepare', 'blade-repair', 120, {
    phase: 'repair',
    caution:
      'Sanding dust of composites harms lungs and skin: extraction, mask and gloves as the safety data sheet says.',
  }),
  work('Fill and lay up', 'blade-repair', 180, { phase: 'repair', fact: 'repaired', materials: ['LM-PR7'] }),
  curing('Cure the repair', 90),
  tap('Tap map after repair', 'repair'),
  work('Replace leading edge film', 'blade-repair', 90, { phase: 'repair', materials: ['LM-FA3'] }),
  curing('Cure the film', 60),
  tapShield('Erosion shield, tap after bonding', 'repair'),
  work('Conductive paint', 'coating', 60, { phase: 'repair', waitMinutes: 480, form: [{ name: 'paint lot' }] }),
  measured('Conductive paint and lightning path by zone', 'dimensional-inspection', {
    ...{ phase: 'repair', standardMinutes: 30, instrumentKind: 'ohmmeter' },
    measures: [...paintResistance, ...lightningPath],
  }),
  work('Paint', 'coating', 60, {
    ...{ phase: 'repair', waitMinutes: 720 },
    form: [{ name: 'paint lot' }, ...masked('root face', 'bearing seat')],
  }),
  measured('Drain holes', 'dimensional-inspection', {
    ...{ phase: 'repair', standardMinutes: 10 },
    instruction: 'After paint: the largest pin that passes each hole.',
    measures: [limit('drain hole, root', 'in', '0.120', '0.140'), limit('drain hole, tip', 'in', '0.090', '0.110')],
    form: [
      { name: 'root hole clear to the cavity', confirm: true },
      { name: 'tip hole clear to the cavity', confirm: true },
    ],
  }),
  inspected('Inspect blade for build', 'blade-repair', 25, { phase: 'repair' }),
];

const blades = [1, 2, 3, 4, 5];
export const shimBladeRoots = work('Shim the blade roots', 'assembly', 100, {
  phase: 'build',
  instrumentKind: 'micrometer',
  instruction: 'Measure, shim, close, turn the blade; open and measure again where it turns too easily or too hard.',
  sheet: {
    ...{ kind: 'fit', unit: 'in', places: blades.map((n) => `blade ${n}`), constant: '0.000', mostPieces: 4 },
    terms: [
      { name: 'socket depth', sign: '+', low: '2.480', high: '2.520' },
      { name: 'bearing cartridge height', sign: '-', low: '1.840', high: '1.860' },
      { name: 'root flange thickness', sign: '-', low: '0.615', high: '0.640' },
    ],
    leaves: { kind: 'preload', low: '0.001', high: '0.003' },
    shims: ['02', '03', '05', '10'].map((size) => ({ thickness: `0.0${size}`, part: `S-SHIM-${size}` })),
    trial: { name: 'torque to turn the blade', unit: 'in-lb', low: '40', high: '70' },
  },
});
const deIce = [
  measured('De-ice resistances', 'assembly', {
    standardMinutes: 40,
    phase: 'build',
    instrumentKind: 'ohmmeter',
    measures: [
      ...perBlade(5, (n) => [
        limit(`boot ${n} resistance`, 'ohm', '4.60', '5.20'),
        limit(`wiring to boot ${n}`, 'ohm', undefined, '0.10'),
      ]),
      limit('slip ring to terminal block', 'ohm', undefined, '0.05'),
      limit('brush to slip ring', 'ohm', undefined, '0.08'),
    ],
  }),
  measured('De-ice insulation', 'assembly', {
    standardMinutes: 25,
    phase: 'build',
    instrumentKind: 'insulation-tester',
    caution:
      'The test voltage shocks, and stays in the circuit for a while: nobody touches blades or wiring, and it is discharged after, as the current approved manual says.',
    measures: [
      ...perBlade(5, (n) => [limit(`boot ${n} to blade`, 'megohm', '0.50')]),
      limit('slip rings to hub', 'megohm', '1.00'),
    ],
  }),
  measured('Slip-ring and spinner runout', 'assembly', {
    standardMinutes: 35,
    phase: 'build',
    instrumentKind: 'dial-indicator',
    measures: [
      limit('slip ring face runout', 'in', undefined, '0.0050'),
      limit('slip ring radial runout', 'in', undefined, '0.0050'),
      limit('spinner bulkhead runout', 'in', undefined, '0.020'),
      limit('spinner dome runout at the tip', 'in', undefined, '0.060'),
    ],
  }),
];

/** Sablewing SW5-83: five composite blades, reversing, de-iced. */
export function sablewing5Blade(): ContentSeed {
  return {
    kitList,
    routes: [
      {
        partClass: 'assembly',
        title: 'Propeller, apart and together',
        scopes: [...overhaul],
        steps: [
          work('Discharge, mark positions, remove spinner', 'teardown', 50, {
            caution: cautions.charge,
            form: weightsFound,
          }),
          work('Take apart', 'teardown', 150, { fact: 'disassembled', caution: cautions.charge }),
          work('Clean small parts', 'cleaning', 60, { fact: 'cleaned' }),
          inspected('Inspect small parts', 'dimensional-inspection', 50, { fact: 'inspected' }),
          work('Repair or replace small parts as found', 'assembly', 40, { phase: 'repair', fact: 'repaired' }),
          work('Assemble hub, pitch change and blades', 'assembly', 360, { phase: 'build', fact: 'reassembled' }),
          shimBladeRoots,
          greased(5, '30.0', '34.0'),
          work('Set blade angles', 'blade-angles', 90, {
            phase: 'build',
            instrumentKind: 'protractor',
            caution: cautions.cycling,
            instruction: 'At the reference station, for the application of this unit, cycled on air before it is read.',
            ...angles(5, '30', {
              'Heronby Kestrelway': [
                stop('low', ['14.3', '14.7'], '0.2'),
                stop('feather', ['83.5', '84.5'], '0.5'),
                stop('reverse', ['-11.5', '-10.5'], '0.3'),
              ],
            }),
          }),
          work('Leak test', 'leak-test', 45, {
            phase: 'build',
            instrumentKind: 'pressure-gauge',
            caution: cautions.pressure,
            fact: 'tested',
            ...leakTest(5, ['245', '255'], ['blade root O-ring', 'piston O-ring', 'hub cover gasket']),
          }),
          work('Play, friction and travel', 'leak-test', 60, {
            phase: 'build',
            instrumentKind: 'dial-indicator',
            caution: cautions.cycling,
            instruction:
              'Each blade by hand in the four directions, at the reference station; then friction, then from stop to stop.',
            ...playAndTravel(5, ['25', '60']),
          }),
          ...deIce,
          staticBalance(110, {
            blades: 5,
            ring: { count: 10, from: 18, radius: '6.4', pieces: 8, stack: '0.520' },
            limit: { by: 'iso-21940-11', grade: '6.3', rpm: '1700', massKg: '62' },
            after: ['paint finished', 'boots on', 'decals on'],
          }),
          inspected('Final inspection', 'final-inspection', 80, { phase: 'final', caution: cautions.release }),
        ],
      },
      {
        partClass: 'hub',
        title: 'Aluminium hub',
        material: 'aluminium',
        scopes: [...overhaul],
        steps: [
          work('Clean and strip', 'cleaning', 60, { fact: 'cleaned', caution: cautions.strippers }),
          work('Penetrant test', 'non-destructive-test', 50),
          inspected('Inspect hub', 'dimensional-inspection', 30, { fact: 'inspected' }),
          work('Anodise', 'coating', 40, { phase: 'repair', caution: cautions.plating, batched: true }),
        ],
      },
      { partClass: 'blade', title: 'Composite blade', material: 'composite', scopes: [...overhaul], steps: bladeRoute },
    ],
    tboRules: [{ hoursTenths: 45_000, months: 84, endOfMonth: false, requirement: 'required' }],
    lifeLimits: [{ partNumber: 'S501-61', hoursTenths: 180_000, overhauls: 5 }],
  };
}
