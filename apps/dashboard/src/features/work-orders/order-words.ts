import { roleTitles } from '@hubwright/contracts/roles';
import {
  type BallHolder,
  type HoldKind,
  type Paper,
  type Stage,
  stageTitles,
} from '@hubwright/contracts/work-orders/states';
import { dueWords, formatDate } from '../../format/dates.ts';
import { countOf } from '../../format/numbers.ts';
import type { WorkOrderRow } from './work-orders.ts';

type UnitNamed = WorkOrderRow['unit'];

/** Designation and serial, or what it is called while nobody could read it. */
export function unitWords(unit: UnitNamed): string {
  return `${unit.designation} ${serialWords(unit)}`;
}

export function serialWords(item: { serial: string | null; provisionalName?: string | null }): string {
  return item.serial ?? `(serial not readable yet${item.provisionalName ? `, called ${item.provisionalName}` : ''})`;
}

export const paperWords: Record<Paper, string> = {
  logbook: 'Logbook',
  'removal-tag': 'Removal tag',
  'previous-release': 'Earlier release',
  'shipping-list': 'Shipping list',
  'purchase-order': 'Purchase order',
};

export const holdWords: Record<HoldKind, string> = {
  customer: 'Customer asked to wait',
  silence: 'Customer does not answer',
  payment: 'Payment or deposit',
  accident: 'Investigator or adjuster',
  paperwork: 'Papers',
  parts: 'Parts',
  revision: 'Manual revision',
  inspection: 'Inspection',
  other: 'Other',
};

/** How long it has been so, in whole days. */
export function daysWords(days: number): string {
  return days === 0 ? 'today' : countOf(days, 'day');
}

export function holderWords(ball: BallHolder): string {
  if (ball === 'customer') return 'the customer';
  return ball === 'nobody' ? 'nobody' : roleTitles[ball].toLowerCase();
}

/** Stages of a unit that is worked on, in the order they are passed. */
export const way: readonly Stage[] = [
  'received',
  'teardown',
  'inspected',
  'in-work',
  'build',
  'final-inspection',
  'released',
  'shipped',
];

/** What to tell the customer who asks when it is ready: the promise, or plainly that there is none yet and what it waits for. */
export function readyAnswer(order: WorkOrderRow, today: string): string {
  if (order.stage === 'closed') return 'It is closed.';
  if (order.stage === 'shipped') return 'It has left the house.';
  if (order.stage === 'scrapped') return 'It was scrapped.';
  if (order.stage === 'returning-unrepaired') return 'It goes back unrepaired.';
  if (order.stage === 'released') return 'It is approved for return to service and ready to ship.';
  if (order.promisedOn === null) return 'No day is promised yet.';
  return `Promised for ${formatDate(order.promisedOn)}, ${dueWords(order.promisedOn, today)}.`;
}

/** Where it is, since when, and who acts next, in one line. */
export function whereWords(order: WorkOrderRow): string {
  const next = order.ball === 'nobody' ? '' : ` Next: ${holderWords(order.ball)}.`;
  const since = order.daysInStage === 0 ? 'since today' : `for ${countOf(order.daysInStage, 'day')}`;
  return `${stageTitles[order.stage]} ${since}.${next}`;
}
