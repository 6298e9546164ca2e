/** `approvedUntil`: days from today. */
export const suppliers = [
  {
    code: 'QUILLON',
    name: 'Quillon Propeller Works, spares',
    email: 'spares@quillon.example.com',
    phone: '555-0121',
    approvedUntil: 300,
  },
  {
    code: 'VEXLEY',
    name: 'Vexley Governors, spares',
    email: 'spares@vexley.example.com',
    phone: '555-0122',
    approvedUntil: 210,
  },
  {
    code: 'HARROW',
    name: 'Harrow Lea Seals',
    email: 'orders@harrowlea.example.com',
    phone: '555-0123',
    approvedUntil: 150,
  },
  {
    code: 'DUNWICK',
    name: 'Dunwick Fasteners',
    email: 'sales@dunwick.example.com',
    phone: '555-0124',
    approvedUntil: 26,
  },
  {
    code: 'OSTREY',
    name: 'Ostrey Bearings',
    email: 'orders@ostrey.example.com',
    phone: '555-0125',
    approvedUntil: 400,
  },
  {
    code: 'LARKMEAD',
    name: 'Larkmead Shop Chemicals',
    email: 'desk@larkmead.example.com',
    phone: '555-0126',
    approvedUntil: 90,
  },
] as const;

/** Bins in the order of the walk. */
export const bins = [
  ['A-01', 'Seals, cool cabinet, top'],
  ['A-02', 'Seals, cool cabinet, middle'],
  ['A-03', 'Seals, cool cabinet, bottom'],
  ['B-01', 'Nuts'],
  ['B-02', 'Bolts and screws'],
  ['B-03', 'Washers and pins'],
  ['C-01', 'Bearings'],
  ['C-02', 'Bushings and guides'],
  ['D-01', 'Springs and rods'],
  ['D-02', 'Hubs and pistons'],
  ['D-03', 'Blades, rack'],
  ['E-01', 'Wire, grease and sealant'],
  ['F-01', 'Governor small parts'],
  ['F-02', 'Governor gears and bodies'],
] as const;
