import type { manualOperations } from '@hubwright/contracts/manuals/operations';
import type { Scope } from '@hubwright/contracts/manuals/words';
import type { Sent } from '@hubwright/contracts/operation';
import { quillon2Blade } from './manuals/quillon-2-blade.ts';
import { quillon3Blade } from './manuals/quillon-3-blade.ts';
import { quillon4Blade } from './manuals/quillon-4-blade.ts';
import { quillonFixedPitch } from './manuals/quillon-fixed-pitch.ts';
import { sablewing5Blade } from './manuals/sablewing-5-blade.ts';
import type { ContentSeed } from './manuals/shapes.ts';
import { vexleyGovernor } from './manuals/vexley-governor.ts';

interface ModelSeed {
  readonly manual: Sent<typeof manualOperations.addManual>;
  readonly model: Omit<Sent<typeof manualOperations.addModel>, 'manualId'>;
  readonly applications: readonly Omit<Sent<typeof manualOperations.addApplication>, 'modelId'>[];
  /** Minutes of flat-rate labour by scope. */
  readonly flatRates: Partial<Record<Scope, number>>;
  /** In order; the last is current. `issued` in days from today. */
  readonly revisions: readonly { readonly revision: string; readonly issued: number; readonly content: ContentSeed }[];
}

const b540 = 'Brindle B-540';
const b360 = 'Brindle B-360';
const t620 = 'Brindle T-620';
const angles = (low: string, high: string) => ({
  'low blade angle': low,
  'high blade angle': high,
  'reference station': '30 in',
});
const feathering = (low: string, feather: string) => ({
  'low blade angle': low,
  'feather angle': feather,
  'reference station': '30 in',
});
const governed = (rpm: string) => ({ rotation: 'clockwise', 'drive ratio': '0.895', 'highest speed setting': rpm });

export const models: readonly ModelSeed[] = [
  {
    manual: {
      number: 'QOM-301',
      title: 'Overhaul manual, three-blade constant-speed propellers',
      maker: 'Quillon',
      kind: 'overhaul',
    },
    model: {
      kind: 'propeller',
      maker: 'Quillon',
      designation: 'Q3C-76',
      bladeCount: 3,
      material: 'aluminium',
      pitch: 'constant-speed',
      identityCarriedBy: 'hub',
      description: 'Three aluminium blades, 76 in, steel hub with clamps. Demonstration data, not for use on aircraft.',
    },
    applications: [
      {
        airframe: 'Heronby Courser 4',
        engine: b540,
        position: 'single',
        approval: 'DTC-104',
        settings: angles('13.4 ± 0.2', '29.0 ± 0.5'),
      },
      {
        airframe: 'Maddock Fieldmaster',
        engine: b540,
        position: 'single',
        approval: 'DTC-131',
        settings: angles('12.6 ± 0.2', '27.5 ± 0.5'),
      },
      {
        airframe: 'Orrick Twinlark',
        engine: b540,
        position: 'left',
        approval: 'DTC-118',
        settings: angles('13.4 ± 0.2', '29.0 ± 0.5'),
      },
      {
        airframe: 'Orrick Twinlark',
        engine: b540,
        position: 'right',
        approval: 'DTC-118',
        settings: angles('13.4 ± 0.2', '29.0 ± 0.5'),
      },
    ],
    flatRates: {
      overhaul: 1_980,
      'inspect-and-repair': 1_380,
      'strike-inspection': 2_280,
      reseal: 600,
      'balance-only': 150,
    },
    revisions: [
      { revision: '4', issued: -800, content: quillon3Blade('4') },
      { revision: '5', issued: -210, content: quillon3Blade('5') },
    ],
  },
  {
    manual: {
      number: 'QOM-201',
      title: 'Overhaul manual, two-blade constant-speed propellers',
      maker: 'Quillon',
      kind: 'overhaul',
    },
    model: {
      kind: 'propeller',
      maker: 'Quillon',
      designation: 'Q2C-72',
      bladeCount: 2,
      material: 'aluminium',
      pitch: 'constant-speed',
      identityCarriedBy: 'hub',
      description: 'Two aluminium blades, 72 in, aluminium hub. Demonstration data, not for use on aircraft.',
    },
    applications: [
      {
        airframe: 'Heronby Pinnace',
        engine: b360,
        position: 'single',
        approval: 'DTC-092',
        settings: angles('12.0 ± 0.2', '27.0 ± 0.5'),
      },
    ],
    flatRates: { overhaul: 1_500, 'inspect-and-repair': 1_020, 'strike-inspection': 1_740, reseal: 480 },
    revisions: [{ revision: '2', issued: -640, content: quillon2Blade('2') }],
  },
  {
    manual: {
      number: 'QOM-401',
      title: 'Overhaul manual, four-blade feathering propellers',
      maker: 'Quillon',
      kind: 'overhaul',
    },
    model: {
      kind: 'propeller',
      maker: 'Quillon',
      designation: 'Q4F-84',
      bladeCount: 4,
      material: 'aluminium',
      pitch: 'feathering',
      identityCarriedBy: 'hub',
      description: 'Four aluminium blades, 84 in, steel hub with clamps. Demonstration data, not for use on aircraft.',
    },
    applications: (['left', 'right'] as const).map((position) => ({
      airframe: 'Orrick Stormcrane',
      engine: t620,
      position,
      approval: 'DTC-207',
      settings: { ...feathering('16.0 ± 0.2', '86.5 ± 0.5'), 'reference station': '36 in' },
      leastDiameter: '82.0',
    })),
    flatRates: {
      overhaul: 3_600,
      'inspect-and-repair': 2_520,
      'strike-inspection': 4_080,
      reseal: 900,
      'balance-only': 180,
    },
    revisions: [{ revision: '3', issued: -520, content: quillon4Blade('3') }],
  },
  {
    manual: {
      number: 'SOM-501',
      title: 'Overhaul manual, five-blade composite propellers',
      maker: 'Sablewing',
      kind: 'overhaul',
    },
    model: {
      kind: 'propeller',
      maker: 'Sablewing',
      designation: 'SW5-83',
      bladeCount: 5,
      material: 'composite',
      pitch: 'reversing',
      identityCarriedBy: 'hub',
      description: 'Five composite blades, 83 in, aluminium hub. Demonstration data, not for use on aircraft.',
    },
    applications: [
      {
        airframe: 'Heronby Kestrelway',
        engine: t620,
        position: 'single',
        approval: 'DTC-221',
        settings: { ...feathering('14.5 ± 0.2', '84.0 ± 0.5'), 'reverse angle': '-11.0 ± 0.5' },
      },
    ],
    flatRates: { overhaul: 5_400, 'inspect-and-repair': 3_900, 'strike-inspection': 6_000, 'balance-only': 180 },
    revisions: [{ revision: '2', issued: -480, content: sablewing5Blade() }],
  },
  {
    manual: {
      number: 'QOM-101',
      title: 'Repair manual, fixed-pitch propellers',
      maker: 'Quillon',
      kind: 'overhaul',
    },
    model: {
      kind: 'propeller',
      maker: 'Quillon',
      designation: 'QX-70',
      bladeCount: 2,
      material: 'aluminium',
      pitch: 'fixed',
      identityCarriedBy: 'plate',
      description: 'One piece of aluminium, two blades, 70 in. Demonstration data, not for use on aircraft.',
    },
    applications: [
      {
        airframe: 'Heronby Wren',
        engine: 'Brindle B-160',
        position: 'single',
        approval: 'DTC-051',
        settings: { pitch: '56 in', 'reference station': '26 in' },
      },
    ],
    flatRates: { 'fixed-pitch': 540, 'strike-inspection': 720 },
    revisions: [{ revision: '9', issued: -700, content: quillonFixedPitch() }],
  },
  {
    manual: { number: 'VOM-14', title: 'Overhaul manual, VG14 governors', maker: 'Vexley', kind: 'overhaul' },
    model: {
      kind: 'governor',
      maker: 'Vexley',
      designation: 'VG14',
      material: 'aluminium',
      pitch: 'none',
      identityCarriedBy: 'plate',
      description: 'Single-acting constant-speed governor. Demonstration data, not for use on aircraft.',
    },
    applications: [
      {
        airframe: 'Heronby Courser 4',
        engine: b540,
        position: 'single',
        approval: 'DTC-104',
        settings: governed('2700 rpm'),
      },
      {
        airframe: 'Orrick Twinlark',
        engine: b540,
        position: 'left',
        approval: 'DTC-118',
        settings: governed('2575 rpm'),
      },
      {
        airframe: 'Orrick Twinlark',
        engine: b540,
        position: 'right',
        approval: 'DTC-118',
        settings: governed('2575 rpm'),
      },
      {
        airframe: 'Heronby Pinnace',
        engine: b360,
        position: 'single',
        approval: 'DTC-092',
        settings: governed('2700 rpm'),
      },
    ],
    flatRates: { governor: 600, overhaul: 600, 'inspect-and-repair': 420 },
    revisions: [{ revision: '7', issued: -430, content: vexleyGovernor() }],
  },
];
