import type { AuthorisationLevel } from '@hubwright/contracts/people/authorisation-levels';
import type { Process } from '@hubwright/contracts/people/operations';
import type { Role } from '@hubwright/contracts/roles';

/** Sign-ins that exist only in the demonstration: everyone has this password and PIN. Never use them anywhere else. */
export const demoPassword = 'willow bark in the workshop';
export const demoPin = '2468';
/** What the administrator gave each; everyone chose the one above with it. */
export const firstPassword = 'handed over on the first morning';

/** What a person may do: processes at one level, from and until days counted from today. */
interface Held {
  readonly level: AuthorisationLevel;
  readonly processes: readonly Process[];
  /** Days from today; expiring is the first day it may not be used. */
  readonly from?: number;
  readonly expires?: number;
}

export interface PersonSeed {
  readonly signInName: string;
  readonly displayName: string;
  readonly initials: string;
  readonly roles: readonly Role[];
  /** Their own certificate, where the invented authority gave them one. */
  readonly certificateNumber?: string;
  readonly authorisations: readonly Held[];
}

const everyBench: readonly Process[] = [
  'teardown',
  'cleaning',
  'non-destructive-test',
  'dimensional-inspection',
  'blade-repair',
  'shot-peening',
  'plating',
  'coating',
  'assembly',
  'blade-angles',
  'leak-test',
  'static-balance',
  'dynamic-balance',
  'governor-bench',
];

export const administrator = { signInName: 'admin', displayName: 'Ottoline Marrable', initials: 'OM' } as const;

/** The first of each role is the one the demonstration signs in as: desk, parts, tech, inspector, manager. */
export const people: readonly PersonSeed[] = [
  { signInName: 'manager', displayName: 'Hester Quayle', initials: 'HQ', roles: ['manager'], authorisations: [] },
  { signInName: 'desk', displayName: 'Wilmot Tarrow', initials: 'WT', roles: ['front-desk'], authorisations: [] },
  { signInName: 'odile', displayName: 'Odile Farrant', initials: 'OF', roles: ['front-desk'], authorisations: [] },
  {
    signInName: 'parts',
    displayName: 'Ines Birtwhistle',
    initials: 'IB',
    roles: ['parts-room'],
    authorisations: [{ level: 'inspect', processes: ['stock-acceptance'], expires: 400 }],
  },
  {
    signInName: 'caspar',
    displayName: 'Caspar Lovelock',
    initials: 'CL',
    roles: ['parts-room'],
    authorisations: [{ level: 'perform', processes: ['stock-acceptance'] }],
  },
  {
    signInName: 'inspector',
    displayName: 'Bram Ostler',
    initials: 'BO',
    certificateNumber: 'DEMO-R-2204',
    roles: ['inspector'],
    authorisations: [
      {
        level: 'inspect',
        processes: [...everyBench, 'receiving-inspection', 'stock-acceptance', 'final-inspection'],
        expires: 500,
      },
      { level: 'perform', processes: ['dimensional-inspection', 'non-destructive-test'], expires: 500 },
      { level: 'approve', processes: ['return-to-service', 'final-inspection'], expires: 500 },
    ],
  },
  {
    signInName: 'sunniva',
    displayName: 'Sunniva Keld',
    initials: 'SK',
    certificateNumber: 'DEMO-R-1871',
    roles: ['inspector'],
    authorisations: [
      { level: 'inspect', processes: [...everyBench, 'receiving-inspection', 'stock-acceptance', 'final-inspection'] },
      { level: 'approve', processes: ['return-to-service', 'final-inspection'] },
    ],
  },
  {
    signInName: 'tech',
    displayName: 'Jory Penhallow',
    initials: 'JP',
    roles: ['technician'],
    authorisations: [{ level: 'perform', processes: everyBench }],
  },
  {
    signInName: 'ludo',
    displayName: 'Ludo Fenwright',
    initials: 'LF',
    roles: ['technician'],
    authorisations: [
      { level: 'perform', processes: ['teardown', 'cleaning', 'non-destructive-test', 'blade-repair'], expires: 200 },
    ],
  },
  {
    signInName: 'maren',
    displayName: 'Maren Skogby',
    initials: 'MS',
    roles: ['technician'],
    authorisations: [{ level: 'perform', processes: ['cleaning', 'shot-peening', 'plating', 'coating'] }],
  },
  {
    signInName: 'tobit',
    displayName: 'Tobit Arkle',
    initials: 'TA',
    roles: ['technician'],
    authorisations: [
      { level: 'perform', processes: ['teardown', 'cleaning', 'assembly', 'leak-test', 'governor-bench'] },
    ],
  },
  {
    // Her balance authorisation ran out: the balance stand refuses her until it is renewed.
    signInName: 'elspeth',
    displayName: 'Elspeth Dunmarrow',
    initials: 'ED',
    roles: ['technician'],
    authorisations: [
      { level: 'perform', processes: ['teardown', 'assembly', 'blade-angles', 'leak-test'] },
      { level: 'perform', processes: ['static-balance'], from: -760, expires: -30 },
    ],
  },
  {
    // A trainee: cleans alone, everything else under supervision.
    signInName: 'piers',
    displayName: 'Piers Wexcombe',
    initials: 'PW',
    roles: ['technician'],
    authorisations: [
      { level: 'perform', processes: ['cleaning'], from: -40 },
      { level: 'trainee', processes: ['blade-repair', 'coating'], from: -40 },
    ],
  },
  {
    signInName: 'rurik',
    displayName: 'Rurik Thane',
    initials: 'RT',
    roles: ['technician'],
    authorisations: [
      { level: 'perform', processes: ['teardown', 'cleaning', 'assembly', 'static-balance'], expires: 45 },
      { level: 'inspect', processes: ['supervision'] },
    ],
  },
];
