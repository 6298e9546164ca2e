import type { InstrumentKind } from '@hubwright/contracts/manuals/words';

interface InstrumentSeed {
  readonly tag: string;
  readonly title: string;
  readonly kind: InstrumentKind;
  /** Days from today. `due` is the last good day. */
  readonly calibrated: number;
  readonly due: number;
  readonly location: string;
  /** Expanded uncertainty as its certificates give it, and the error allowed at a point of each calibration. */
  readonly known?: {
    readonly uncertainty: string;
    readonly unit: string;
    readonly nominal: string;
    readonly allowed: string;
    /** In further quantities, as a bench has them. */
    readonly moreDoubts?: readonly { readonly uncertainty: string; readonly unit: string }[];
  };
}

export const instruments: readonly InstrumentSeed[] = [
  {
    tag: 'CAL-01',
    title: 'Digital caliper 12 in',
    kind: 'caliper',
    calibrated: -120,
    due: 245,
    location: 'Blade bench 1',
    known: { uncertainty: '0.0006', unit: 'in', nominal: '6.0000', allowed: '0.0015' },
  },
  {
    tag: 'CAL-02',
    title: 'Digital caliper 12 in',
    kind: 'caliper',
    calibrated: -372,
    due: -7,
    location: 'Blade bench 2',
  },
  {
    tag: 'MIC-01',
    title: 'Micrometer set 2 to 6 in',
    kind: 'micrometer',
    calibrated: -60,
    due: 305,
    location: 'Inspection',
    known: { uncertainty: '0.0001', unit: 'in', nominal: '4.0000', allowed: '0.0003' },
  },
  { tag: 'MIC-02', title: 'Bore micrometer', kind: 'micrometer', calibrated: -300, due: 65, location: 'Inspection' },
  {
    tag: 'PRO-01',
    title: 'Blade protractor',
    kind: 'protractor',
    calibrated: -90,
    due: 90,
    location: 'Build bench',
    known: { uncertainty: '0.05', unit: 'degrees', nominal: '30.00', allowed: '0.10' },
  },
  { tag: 'PRO-02', title: 'Blade protractor', kind: 'protractor', calibrated: -170, due: 10, location: 'Build bench' },
  {
    tag: 'TRQ-01',
    title: 'Torque wrench 20 to 200 in-lb',
    kind: 'torque-wrench',
    calibrated: -45,
    due: 137,
    location: 'Build bench',
  },
  {
    tag: 'TRQ-02',
    title: 'Torque wrench 10 to 150 ft-lb',
    kind: 'torque-wrench',
    calibrated: -150,
    due: 32,
    location: 'Build bench',
  },
  {
    tag: 'GAU-01',
    title: 'Test pressure gauge 0 to 600 psi',
    kind: 'pressure-gauge',
    calibrated: -80,
    due: 285,
    location: 'Leak stand',
  },
  { tag: 'BAL-01', title: 'Balance stand', kind: 'balance-stand', calibrated: -30, due: 335, location: 'Balance room' },
  {
    tag: 'THK-01',
    title: 'Coating thickness gauge',
    kind: 'thickness-gauge',
    calibrated: -200,
    due: 165,
    location: 'Paint',
  },
  {
    tag: 'GOV-01',
    title: 'Governor test bench',
    kind: 'governor-bench',
    calibrated: -55,
    due: 310,
    location: 'Governor room',
    known: {
      ...{ uncertainty: '1.5', unit: 'psi', nominal: '300', allowed: '3' },
      moreDoubts: [
        { uncertainty: '0.1', unit: 'qt/min' },
        { uncertainty: '0.2', unit: 'qt/h' },
        { uncertainty: '2', unit: 'rpm' },
      ],
    },
  },
  {
    tag: 'EDC-01',
    title: 'Eddy-current set',
    kind: 'eddy-current-set',
    calibrated: -10,
    due: 355,
    location: 'Inspection',
  },
  {
    tag: 'OHM-01',
    title: 'Low-resistance meter',
    kind: 'ohmmeter',
    calibrated: -220,
    due: 145,
    location: 'Build bench',
  },
  {
    tag: 'INS-01',
    title: 'Insulation tester 500 V',
    kind: 'insulation-tester',
    calibrated: -140,
    due: 225,
    location: 'Build bench',
  },
  {
    tag: 'DIA-01',
    title: 'Dial indicator with base',
    kind: 'dial-indicator',
    calibrated: -70,
    due: 110,
    location: 'Build bench',
    known: { uncertainty: '0.001', unit: 'in', nominal: '0.0500', allowed: '0.0015' },
  },
  {
    tag: 'VIB-01',
    title: 'Vibration analyser with phase sensor',
    kind: 'vibration-analyser',
    calibrated: -95,
    due: 270,
    location: 'Travel case 1',
  },
];
