import type { Reply } from '@hubwright/contracts/operation';
import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { type PeeningLot, type PeeningMachine, peeningOperations } from '@hubwright/contracts/peening/operations';
import { queryFor } from '../../api/query.ts';
import type { State } from '../../ui/StateMark.tsx';

export type Lot = PeeningLot;
export type Machine = PeeningMachine;
export type Setup = Machine['setups'][number];
export type Media = Reply<typeof mediaOperations.listPeeningMedia>['rows'][number];
export type MediaReview = Reply<typeof mediaOperations.listMediaReviews>['rows'][number];
export type Waiting = Reply<typeof peeningOperations.waitingForPeening>['rows'][number];

export const machinesQuery = queryFor(peeningOperations.listPeeningMachines, {});
export const waitingQuery = queryFor(peeningOperations.waitingForPeening, {});
export const lotsQuery = (show: 'under-way' | 'all') =>
  queryFor(peeningOperations.listPeeningLots, { show, limit: 50 });

export const mediaQuery = queryFor(mediaOperations.listPeeningMedia, { limit: 50 });
export const mediaReviewsQuery = queryFor(mediaOperations.listMediaReviews, { show: 'open', limit: 100 });

export const mediaMarks: Record<Media['state'], { state: State; word: string }> = {
  good: { state: 'passed', word: 'check holds' },
  unchecked: { state: 'waiting', word: 'not checked yet' },
  overdue: { state: 'stop', word: 'check overdue' },
  failed: { state: 'stop', word: 'check failed' },
};

export const lotMarks: Record<Lot['state'], { state: State; word: string }> = {
  open: { state: 'open', word: 'opening strips good, to be peened' },
  peened: { state: 'waiting', word: 'closing strips missing' },
  released: { state: 'passed', word: 'released' },
  held: { state: 'stop', word: 'held: closing strips failed' },
  redone: { state: 'note', word: 'peened again' },
  'broken-up': { state: 'note', word: 'broken up' },
};

/** Arc heights are in inches unless a specification says millimetres. */
export const unitOf = ({ unit }: { unit: string }) => (unit === 'mm' ? 'mm' : 'in');

export function bandOf({ low, high, unit, strip }: Lot['spec']['areas'][number]): string {
  return `${low} to ${high} ${unit} ${strip}`;
}

/** Strips as they are typed or pasted: a time and a net arc height a line. Null where a line says something else. */
export function stripsFrom(text: string): { time: string; arcHeight: string }[] | null {
  const lines = text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const strips = lines.map((line) => line.split(/[\s,;]+/));
  if (strips.some((parts) => parts.length !== 2 || parts.some((part) => !/^\d{1,9}(\.\d{1,8})?$/.test(part))))
    return null;
  return strips.map(([time = '', arcHeight = '']) => ({ time, arcHeight }));
}

/** Limits by sieve as they are typed: name, least and most percent a line. Null where a line says something else. */
export function sievesFrom(text: string): { name: string; low?: string; high?: string }[] | null {
  const lines = text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const sieves = lines.map((line) => line.split(',').map((part) => part.trim()));
  const isPercent = (part: string) => part === '' || /^\d{1,3}(\.\d{1,4})?$/.test(part);
  if (sieves.some((parts) => parts.length !== 3 || !parts[0] || !parts.slice(1).every(isPercent))) return null;
  return sieves.map(([name = '', low, high]) => ({ name, ...(low ? { low } : {}), ...(high ? { high } : {}) }));
}
