// size: tables of data, one entry a line
import { angles, leakTest, playAndTravel, stop } from './build-sheets.ts';
import {
  type ContentSeed,
  cautions,
  inspected,
  limit,
  line,
  masked,
  measured,
  perBlade,
  wheneverApart,
  work,
} from './shapes.ts';
import { staticBalance, weightsFound } from './static-balance.ts';

// Demonstration data, not for use on aircraft: every number here is invented.
const apart = { scopes: wheneverApart };
const balanced = [...wheneverApart, 'balance-only' as const];
const blade = { per: 'blade', scopes: wheneverApart } as const;
const reused = { source: 'reused', scopes: wheneverApart } as const;
const either = { source: 'any', scopes: wheneverApart } as const;
const overhaul = ['overhaul', 'inspect-and-repair', 'strike-inspection'] as const;

const kitList = [
  line('Q201-11', 'shank O-ring', 2, blade),
  line('Q201-12', 'piston O-ring', 1, apart),
  line('Q201-13', 'cylinder O-ring', 2, apart),
  line('Q201-15', 'hub gasket', 1, apart),
  line('Q201-16', 'mounting face O-ring', 1, apart),
  line('Q201-26', 'cylinder retaining ring', 1, apart),
  line('Q301-31', 'hub nuts', 8, apart),
  line('Q301-33', 'pitch link cotter pin', 1, blade),
  line('Q301-34', 'mounting nut cotter pins', 6, apart),
  line('Q301-44', 'low pitch stop lock nut', 1, apart),
  line('Q201-21', 'retention bearing balls', 22, { per: 'blade' }),
  line('Q201-24', 'pitch link bushing', 1, { per: 'blade' }),
  line('Q301-39', 'spinner bulkhead screws', 6),
  line('Q301-40', 'spinner washers', 6),
  line('Q301-41', 'grease fitting', 1, { per: 'blade' }),
  line('Q301-42', 'grease fitting cap', 1, { per: 'blade' }),
  line('Q201-51', 'pitch return spring', 1, reused),
  line('Q201-32', 'hub bolts', 8, reused),
  line('Q301-53', 'pitch link', 1, { ...either, per: 'blade' }),
  line('Q201-61', 'hub', 1, either),
  line('Q72-B', 'blade 1', 1, either),
  line('Q72-B', 'blade 2', 1, either),
  line('LM-SW32', 'safety wire', 120, { ...apart, minimum: 18 }),
  line('LM-GR6', 'grease', 300, { ...apart, minimum: 80 }),
  line('Q-SHIM-05', 'preload shims 0.005', 3, { per: 'blade', minimum: 0 }),
  line('Q-BW-1', 'static balance washers', 12, { scopes: balanced, minimum: 0 }),
];

const evaluation = [
  work('Discharge, mark positions, remove spinner', 'teardown', 30, { caution: cautions.charge, form: weightsFound }),
  work('Take apart', 'teardown', 80, { fact: 'disassembled', caution: cautions.charge }),
  work('Clean small parts', 'cleaning', 30, { fact: 'cleaned' }),
  inspected('Inspect small parts', 'dimensional-inspection', 30, { fact: 'inspected' }),
];
const buildAndFinal = [
  work('Assemble hub, pitch change and blades', 'assembly', 180, { phase: 'build', fact: 'reassembled' }),
  measured('Torque hub and stop', 'assembly', {
    standardMinutes: 30,
    phase: 'build',
    instrumentKind: 'torque-wrench',
    measures: [
      limit('hub nut torque, lowest', 'ft-lb', '38'),
      limit('hub nut torque, highest', 'ft-lb', undefined, '44'),
      limit('low pitch stop lock nut torque', 'ft-lb', '28', '32'),
    ],
  }),
  work('Set blade angles', 'blade-angles', 45, {
    phase: 'build',
    instrumentKind: 'protractor',
    caution: cautions.cycling,
    instruction: 'At the reference station, for the application of this unit, cycled on air before it is read.',
    ...angles(2, '30', {
      'Heronby Pinnace': [stop('low', ['11.8', '12.2'], '0.2'), stop('high', ['26.5', '27.5'], '0.5')],
    }),
  }),
  work('Leak test', 'leak-test', 30, {
    phase: 'build',
    instrumentKind: 'pressure-gauge',
    caution: cautions.pressure,
    fact: 'tested',
    ...leakTest(2, ['165', '175'], []),
  }),
  work('Play, friction and travel', 'leak-test', 40, {
    phase: 'build',
    instrumentKind: 'dial-indicator',
    caution: cautions.cycling,
    instruction:
      'Each blade by hand in the four directions, at the reference station; then friction, then from stop to stop.',
    ...playAndTravel(2, ['15', '40']),
  }),
  staticBalance(70, {
    blades: 2,
    ring: { count: 4, from: 45, radius: '4.8', pieces: 6, stack: '0.400' },
    limit: { by: 'manual', moment: '54' },
    after: ['paint finished', 'decals on'],
  }),
  inspected('Final inspection', 'final-inspection', 50, { phase: 'final', caution: cautions.release }),
];

const bladeSteps = (width: string) => [
  work('Strip paint and clean', 'cleaning', 60, { fact: 'cleaned', caution: cautions.strippers }),
  work('Penetrant test, whole blade', 'non-destructive-test', 40),
  measured('Measure blade by station', 'dimensional-inspection', {
    standardMinutes: 30,
    instrumentKind: 'caliper',
    measures: [
      limit('width at 18 in', 'in', '6.010'),
      limit('width at 24 in', 'in', width),
      limit('width at 30 in', 'in', '5.120'),
      limit('thickness at 24 in', 'in', '0.655'),
      limit('thickness at 30 in', 'in', '0.430'),
      limit('length', 'in', '35.750', '36.000'),
    ],
  }),
  measured('Measure shank', 'dimensional-inspection', {
    standardMinutes: 15,
    instrumentKind: 'micrometer',
    measures: [limit('shank diameter', 'in', '3.4980', '3.5010')],
  }),
  inspected('Inspect blade', 'dimensional-inspection', 20, { fact: 'inspected' }),
  work('Blend and polish', 'blade-repair', 120, { phase: 'repair', fact: 'repaired' }),
  work('Penetrant test after blending', 'non-destructive-test', 25, { phase: 'repair' }),
  work('Conversion coat and paint, mating faces masked', 'coating', 60, {
    phase: 'repair',
    caution: cautions.plating,
    form: masked('butt face', 'bearing seat'),
  }),
  inspected('Inspect blade for build', 'blade-repair', 15, { phase: 'repair' }),
];

/** Quillon Q2C-72: two aluminium blades, constant speed. Revision 3 tightens the width at 24 in and renews the mounting stud nuts. */
export function quillon2Blade(revision: '2' | '3'): ContentSeed {
  const extra = revision === '3' ? [line('Q301-43', 'mounting stud nuts', 6)] : [];
  return {
    kitList: [...kitList, ...extra],
    routes: [
      {
        partClass: 'assembly',
        title: 'Propeller, apart and together',
        scopes: [...overhaul],
        steps: [
          ...evaluation,
          work('Repair or replace small parts as found', 'assembly', 20, { phase: 'repair', fact: 'repaired' }),
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
        partClass: 'hub',
        title: 'Aluminium hub',
        scopes: [...overhaul],
        steps: [
          work('Clean and strip', 'cleaning', 45, { fact: 'cleaned', caution: cautions.strippers }),
          work('Penetrant test', 'non-destructive-test', 40),
          measured('Measure bores and sockets', 'dimensional-inspection', {
            standardMinutes: 25,
            instrumentKind: 'micrometer',
            measures: perBlade(2, (n) => [limit(`blade socket ${n} diameter`, 'in', '3.7410', '3.7440')]),
          }),
          inspected('Inspect hub', 'dimensional-inspection', 20, { fact: 'inspected' }),
          work('Blend and coat', 'coating', 45, { phase: 'repair', fact: 'repaired' }),
        ],
      },
      {
        partClass: 'hub',
        title: 'Hub, look over',
        scopes: ['reseal'],
        steps: [inspected('Look over hub', 'dimensional-inspection', 15)],
      },
      {
        partClass: 'blade',
        title: 'Aluminium blade',
        scopes: [...overhaul],
        steps: bladeSteps(revision === '3' ? '5.690' : '5.675'),
      },
      {
        partClass: 'blade',
        title: 'Blade, look over',
        scopes: ['reseal'],
        steps: [inspected('Look over blade and shank', 'dimensional-inspection', 15)],
      },
    ],
    tboRules: [
      { hoursTenths: 24_000, months: 72, endOfMonth: false, requirement: 'recommended' },
      { hoursTenths: 15_000, months: 48, endOfMonth: false, requirement: 'required', useCategory: 'acrobatic' },
    ],
    // The hub is retired at 8,500.0 h since new; QC3333 in the shop is past it, and of QC4471 nobody knows.
    lifeLimits: [{ partNumber: 'Q201-61', hoursTenths: 85_000 }],
  };
}
