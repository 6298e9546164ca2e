import type { DocumentKind } from '@hubwright/contracts/manuals/words';

interface DocumentSeed {
  readonly kind: DocumentKind;
  readonly number: string;
  readonly title: string;
  readonly issuer: string;
  readonly models: readonly string[];
  /** Oldest first; the last is current. `issued` counts days from the shop's today. */
  readonly issues: readonly { readonly issue: string; readonly issued: number; readonly summary: string }[];
}

const propellers = ['Q3C-76', 'Q2C-72'];

/** What the invented shop holds beside the overhaul manuals. */
export const documents: readonly DocumentSeed[] = [
  {
    kind: 'blade-manual',
    number: 'QBM-2',
    title: 'Aluminium blades, inspection and repair',
    issuer: 'Quillon',
    models: propellers,
    issues: [{ issue: 'revision 6', issued: -900, summary: 'Bend chart drawn anew; limits unchanged.' }],
  },
  {
    kind: 'standard-practices',
    number: 'QSP-1',
    title: 'Standard practices',
    issuer: 'Quillon',
    models: propellers,
    issues: [{ issue: 'revision 12', issued: -700, summary: 'Penetrant families renamed; dwell times unchanged.' }],
  },
  {
    kind: 'service-letter',
    number: 'QSL-44',
    title: 'Clamp bolts, torque in two stages',
    issuer: 'Quillon',
    models: ['Q3C-76'],
    issues: [
      { issue: 'first issue', issued: -800, summary: 'Clamp bolts are drawn up in two stages, dry.' },
      { issue: 'issue A', issued: -500, summary: 'The second stage follows after one full pitch cycle.' },
    ],
  },
  {
    kind: 'directive',
    number: 'DA-2025-17',
    title: 'Hub arms of three-blade propellers after a strike',
    issuer: 'the demonstration authority',
    models: ['Q3C-76'],
    issues: [
      { issue: 'first issue', issued: -480, summary: 'Magnetic particle test of all arms after a declared strike.' },
    ],
  },
];
