// size: tables of data, one entry a line
import { type ContentSeed, cautions, inspected, limit, line, measured, work } from './shapes.ts';

// Demonstration data, not for use on aircraft: every number here is invented.
const scopes: ('governor' | 'overhaul' | 'inspect-and-repair')[] = ['governor', 'overhaul', 'inspect-and-repair'];
const always = { scopes };
const reused = { scopes, source: 'reused' } as const;
const either = { scopes, source: 'any' } as const;

const bench = { instrumentKind: 'governor-bench', caution: cautions.pressure, standardMinutes: 50 } as const;
const asReceived = measured('Run as received', 'governor-bench', {
  ...bench,
  instruction: 'Rotation and drive ratio of the application. Oil at test temperature before the first reading.',
  measures: [limit('oil temperature', '°F', '150', '180'), limit('relief pressure as received', 'psi', '0', '600')],
});
/** What is read goes by the program of the application, see governor-programs.ts. */
const test = work('Test on the bench', 'governor-bench', bench.standardMinutes, {
  ...bench,
  phase: 'final',
  fact: 'tested',
  sheet: { kind: 'governor-test' },
  instruction: 'Rotation, drive ratio and stops of the application, by its program.',
});

/** Vexley VG14: single-acting governor for constant-speed propellers. */
export function vexleyGovernor(): ContentSeed {
  return {
    kitList: [
      line('V14-11', 'body O-rings', 3, always),
      line('V14-12', 'control shaft O-rings', 2, always),
      line('V14-13', 'mounting gasket', 1, always),
      line('V14-14', 'drive shaft seal', 1, always),
      line('V14-21', 'flyweight head bearing', 1, always),
      line('V14-22', 'pilot valve bushing', 1, { scopes: ['governor', 'overhaul'], serialTo: 'VG4999' }),
      line('V14-23', 'flyweight toe pins', 2, always),
      line('V14-24', 'relief valve seat', 1, always),
      line('V14-31', 'body screws', 8, always),
      line('V14-32', 'body lock washers', 8, always),
      line('V14-33', 'control lever cotter pin', 1, always),
      line('V14-34', 'control lever nut', 1, always),
      line('V14-51', 'speeder spring', 1, reused),
      line('V14-52', 'relief valve spring', 1, reused),
      line('V14-53', 'pump gears', 1, either),
      line('V14-54', 'pilot valve', 1, either),
      line('LM-SW32', 'safety wire', 60, { ...always, minimum: 6 }),
      line('LM-SL2', 'sealant', 5, { ...always, minimum: 0 }),
    ],
    routes: [
      {
        partClass: 'assembly',
        title: 'Governor',
        scopes,
        steps: [
          asReceived,
          work('Take apart', 'teardown', 45, { fact: 'disassembled', caution: cautions.charge }),
          work('Clean', 'cleaning', 25, { fact: 'cleaned', caution: cautions.strippers }),
          measured('Measure gears, valve and flyweights', 'dimensional-inspection', {
            standardMinutes: 30,
            instrumentKind: 'micrometer',
            measures: [
              limit('gear end clearance', 'in', '0.0010', '0.0025'),
              limit('pilot valve diameter', 'in', '0.4994', '0.4998'),
              limit('flyweight toe height, difference', 'in', undefined, '0.0010'),
            ],
          }),
          inspected('Inspect parts', 'dimensional-inspection', 25, { fact: 'inspected' }),
          work('Lap valve, repair or replace as found', 'assembly', 40, { phase: 'repair', fact: 'repaired' }),
          work('Assemble', 'assembly', 75, { phase: 'build', fact: 'reassembled' }),
          measured('Torque body and lever', 'assembly', {
            standardMinutes: 15,
            phase: 'build',
            instrumentKind: 'torque-wrench',
            measures: [
              limit('body screw torque', 'in-lb', '55', '65'),
              limit('lever nut torque', 'in-lb', '90', '110'),
            ],
          }),
          test,
          inspected('Final inspection', 'final-inspection', 30, { phase: 'final', caution: cautions.release }),
        ],
      },
    ],
    tboRules: [{ hoursTenths: 24_000, months: 72, endOfMonth: false, requirement: 'recommended' }],
    serviceLimits: {
      storage: [
        { preservation: 'long-term', counts: false, longestMonths: 24 },
        { preservation: 'short-term', counts: true, longestMonths: 6 },
      ],
      seals: [
        { partNumber: 'V14-14', installedMonths: 72, curedMonths: 120, endOfMonth: true, requirement: 'required' },
      ],
    },
  };
}
