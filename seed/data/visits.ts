import type { UseCategory } from '@hubwright/contracts/manuals/service-limits';
import type { DeclaredEvent, Scope } from '@hubwright/contracts/manuals/words';
import type { Paper } from '@hubwright/contracts/work-orders/states';

/** How far a visit has come, in order. */
export const milestones = [
  'received',
  'looked-at',
  'estimate-sent',
  'evaluation-approved',
  'teardown',
  'evaluated',
  'quote-sent',
  'approved',
  'repaired',
  'pulled',
  'built',
  'released',
  'shipped',
  'closed',
] as const;
export type Milestone = (typeof milestones)[number];

/** What goes wrong on the way, played by work-orders.ts. */
export type Trouble =
  | 'half-evaluated'
  | 'hub-rejected'
  | 'blade-rejected'
  | 'over-and-above'
  | 'half-built'
  | 'declined'
  | 'identity-open'
  | 'half-repaired'
  | 'silent'
  | 'unpaid'
  | 'half-tested';

export interface VisitSeed {
  readonly customer: string;
  readonly registration?: string;
  readonly model: 'Q3C-76' | 'Q2C-72' | 'Q4F-84' | 'SW5-83' | 'QX-70' | 'VG14';
  readonly position?: 'single' | 'left' | 'right';
  readonly scope: Scope;
  readonly serial: string;
  /** Tenths of an hour; absent: unknown. */
  readonly sinceNew?: number;
  readonly sinceOverhaul?: number;
  /** Days from today. */
  readonly received: number;
  /** Days in house when it takes the whole way. */
  readonly days: number;
  readonly until: Milestone;
  readonly reason: string;
  /** How its owner says it is used; null where he did not say. */
  readonly use?: UseCategory | null;
  readonly events?: readonly DeclaredEvent[];
  readonly papers?: readonly Paper[];
  readonly loose?: readonly (readonly [string, number])[];
  readonly trouble?: Trouble;
  /** Days the customer was promised, counted from the yes; absent: as many as the whole way takes. */
  readonly promiseDays?: number;
}

export const allPapers: readonly Paper[] = ['logbook', 'removal-tag', 'shipping-list'];
export const box = [['Shipping box', 1]] as const;
