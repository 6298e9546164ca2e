import type { SourceClass } from '@hubwright/contracts/inventory/operations';

/** A delivery without a purchase order. Days from today. */
export interface DeliverySeed {
  readonly part: string;
  readonly day: number;
  readonly quantity: number;
  /** Days from today; only for parts with a shelf life. */
  readonly cured?: number;
  readonly serial?: string;
  readonly sourceClass?: SourceClass;
  /** Absent: certificate of the delivery. Empty: it came without one. */
  readonly certificate?: '';
  readonly damage?: string;
  /** What became of it; absent: accepted and put in its bin. */
  readonly left?: 'in quarantine' | 'rejected';
}

/** How many of a part came when the shop began to keep its stock here. */
const usual: Readonly<Record<string, number>> = {
  'Q301-11': 60,
  'Q301-11A': 12,
  'Q301-12': 24,
  'Q301-13': 40,
  'Q301-14': 40,
  'Q301-15': 14,
  'Q301-16': 24,
  'Q301-17': 10,
  'Q301-21': 900,
  'Q301-22': 8,
  'Q301-24': 50,
  'Q301-25': 20,
  'Q301-26': 12,
  'Q301-27': 12,
  'Q301-31': 225,
  'Q301-31A': 25,
  'Q301-32': 12,
  'Q301-33': 200,
  'Q301-34': 300,
  'Q301-35': 6,
  'Q301-36': 75,
  'Q301-37': 150,
  'Q301-38': 25,
  'Q301-39': 200,
  'Q301-40': 200,
  'Q301-41': 50,
  'Q301-42': 50,
  'Q301-43': 100,
  'Q301-44': 25,
  'Q301-51': 2,
  'Q301-52': 1,
  'Q301-53': 3,
  'Q201-11': 40,
  'Q201-12': 12,
  'Q201-13': 24,
  'Q201-15': 10,
  'Q201-16': 12,
  'Q201-21': 400,
  'Q201-24': 20,
  'Q201-26': 10,
  'Q201-32': 8,
  'Q201-51': 2,
  'V14-11': 30,
  'V14-12': 20,
  'V14-13': 16,
  'V14-14': 16,
  'V14-21': 12,
  'V14-22': 6,
  'V14-23': 32,
  'V14-24': 12,
  'V14-31': 125,
  'V14-32': 150,
  'V14-33': 50,
  'V14-34': 25,
  'V14-51': 2,
  'V14-52': 2,
  'V14-54': 1,
  'LM-GR6': 6_000,
  'LM-SW32': 4_800,
  'LM-SW41': 3_600,
  'LM-AS1': 450,
  'S-SHIM-02': 30,
  'S-SHIM-03': 30,
  'S-SHIM-05': 30,
  'S-SHIM-10': 40,
  'Q-SHIM-05': 40,
  'Q-SHIM-10': 40,
  'Q-BW-1': 100,
  'Q-DW-B1': 40,
  'Q-DW-B2': 40,
  'Q-DW-W1': 80,
  'Q-DW-W2': 80,
};

/** Some of which the shop uses much: it came again in spring. */
const again = ['Q301-11', 'Q301-31', 'Q301-36', 'Q301-37', 'V14-11', 'LM-GR6'];

const regular: readonly DeliverySeed[] = Object.entries(usual).flatMap(([part, quantity]) => [
  { part, quantity, day: -372, cured: -420 },
  ...(again.includes(part) ? [{ part, quantity, day: -160, cured: -190 }] : []),
]);

/** What makes the parts room think. */
const particular: readonly DeliverySeed[] = [
  // Needle bearings run short: three blades want three.
  { part: 'Q301-23', day: -372, quantity: 6 },
  { part: 'Q301-23', day: -60, quantity: 2 },
  // Sealant keeps a year: this tube has expired on the shelf, that one is good.
  { part: 'LM-SL2', day: -340, quantity: 300, cured: -376 },
  { part: 'LM-SL2', day: -45, quantity: 225, cured: -70 },
  // An old seal that ran out, and one about to.
  { part: 'Q301-13', day: -300, quantity: 6, cured: -1_840 },
  { part: 'Q301-14', day: -290, quantity: 8, cured: -1_806 },
  { part: 'Q76-B', day: -75, quantity: 1, serial: 'QB20551' },
  { part: 'Q72-B', day: -130, quantity: 1, serial: 'QC08812' },
  { part: 'Q301-62', day: -120, quantity: 1, serial: 'QP1177', sourceClass: 'used-serviceable' },
  { part: 'Q301-36', day: -30, quantity: 50, sourceClass: 'approved-manufacturer' },
  // Kept frozen: a roll nearly out of its time, and whole ones.
  { part: 'LM-PR7', day: -200, quantity: 1_800, cured: -240 },
  { part: 'LM-PR7', day: -70, quantity: 1_800, cured: -100 },
  { part: 'LM-FA3', day: -90, quantity: 900, cured: -120 },
  // On the dock.
  { part: 'Q301-12', day: -2, quantity: 20, cured: -60, left: 'in quarantine' },
  { part: 'Q301-31', day: -1, quantity: 100, certificate: '', left: 'in quarantine' },
  { part: 'Q301-24', day: -9, quantity: 25, damage: 'Box crushed, four bushings dented', left: 'rejected' },
];

export const deliveries: readonly DeliverySeed[] = [...regular, ...particular];

/** Purchase orders. `confirmed`: days beyond what was asked for, on every line. `due` in days from today; what `came` on a day is received against the line. */
export const purchaseOrders = [
  {
    supplier: 'OSTREY',
    day: -34,
    sent: 'e-mail',
    confirmed: 0,
    note: 'Needle bearings promised in three weeks; chased twice.',
    lines: [
      { part: 'Q301-23', quantity: 30, due: -4 },
      { part: 'Q301-22', quantity: 8, due: 12 },
    ],
  },
  {
    supplier: 'QUILLON',
    day: -20,
    sent: 'their site',
    confirmed: 6,
    note: '',
    lines: [
      { part: 'Q301-15', quantity: 12, due: 3 },
      { part: 'Q301-61', quantity: 1, due: 41 },
      { part: 'Q301-51', quantity: 3, due: 3 },
    ],
  },
  {
    supplier: 'HARROW',
    day: -16,
    sent: 'e-mail',
    note: '',
    lines: [
      { part: 'Q301-11', quantity: 100, due: -2, came: { day: -3, quantity: 60, cured: -40 } },
      { part: 'Q301-13', quantity: 50, due: 5 },
    ],
  },
  { supplier: 'VEXLEY', day: -6, note: '', lines: [{ part: 'V14-53', quantity: 2, due: 22 }] },
] as const;

/** O-rings ordered again and again: what the record of their supplier is learnt from. Days from the order to the box. */
export const ringOrders = [15, 12, 14, 19, 13, 14, 22, 12, 16, 13, 15].map((took, index) => ({
  part: (['Q301-14', 'Q201-13', 'Q301-16'] as const)[index % 3] ?? 'Q301-14',
  day: -380 + index * 32,
  quantity: 5,
  promised: 14,
  took,
}));

/** Further suppliers of a part, and what their price lists say. The part's own supplier comes first. */
export const offers = [
  ...['Q301-11', 'Q301-12', 'Q301-13', 'Q301-14'].map((part) => ({
    ...{ part, supplier: 'HARROW', preference: 1, packSize: 10, minimum: 20, leadTimeDays: 14 },
    breaks: [
      { from: 1, unitPrice: '7.40' },
      { from: 50, unitPrice: '6.20' },
      { from: 200, unitPrice: '5.10' },
    ],
  })),
  {
    ...{ part: 'Q301-11', supplier: 'QUILLON', preference: 2, packSize: 1, minimum: 1, leadTimeDays: 7 },
    breaks: [{ from: 1, unitPrice: '9.90' }],
  },
  {
    ...{ part: 'Q301-23', supplier: 'OSTREY', preference: 1, packSize: 1, minimum: 10, leadTimeDays: 21 },
    breaks: [
      { from: 1, unitPrice: '38.50' },
      { from: 50, unitPrice: '33.00' },
    ],
  },
] as const;

/** Sums under which a supplier takes no order. */
export const leastOrders = { HARROW: '75.00', DUNWICK: '120.00', LARKMEAD: '50.00' } as const;

/** What is looked at on receipt, from this day on. Common practice, no source. */
export const checklistDay = -370;
export const checklists = {
  mandatory: [
    'Part number and quantity agree with order and paper',
    'Package whole, no damage in transit',
    'Certificate names this part and lot',
  ],
  seal: [
    'Part number and quantity agree with order and paper',
    'Sealed in its own bag, dark and dry, cure date on it',
    'No nick, flat or bloom on the pieces looked at',
  ],
  hardware: ['Part number and quantity agree with order and paper', 'Head marking, thread and finish as drawn'],
  serialized: [
    'Serial on the part agrees with its paper',
    'Package whole, no damage in transit',
    'Preservation and caps in place',
  ],
} as const;
