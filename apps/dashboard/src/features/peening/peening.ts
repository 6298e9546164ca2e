import type { Reply } from '@hubwright/contracts/operation';
import { type PeeningLot, type PeeningMachine, peeningOperations } from '@hubwright/contracts/peening/operations';
import { queryFor } from '../../api/query.ts';
import type { State } from '../../ui/StateMark.tsx';

export type Lot = PeeningLot;
export type Machine = PeeningMachine;
export type Setup = Machine['setups'][number];
export type Waiting = Reply<typeof peeningOperations.waitingForPeening>['rows'][number];

export const machinesQuery = queryFor(peeningOperations.listPeeningMachines, {});
export const waitingQuery = queryFor(peeningOperations.waitingForPeening, {});
export const lotsQuery = (show: 'under-way' | 'all') =>
  queryFor(peeningOperations.listPeeningLots, { show, limit: 50 });

export const lotMarks: Record<Lot['state'], { state: State; word: string }> = {
  open: { state: 'open', word: 'opening strips good, to be peened' },
  peened: { state: 'waiting', word: 'closing strips missing' },
  released: { state: 'passed', word: 'released' },
  held: { state: 'stop', word: 'held: closing strips failed' },
  redone: { state: 'note', word: 'peened again' },
  'broken-up': { state: 'note', word: 'broken up' },
};

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
