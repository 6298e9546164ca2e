import type { Scope } from '@hubwright/contracts/manuals/words';
import type { Reply } from '@hubwright/contracts/operation';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import type { BallHolder } from '@hubwright/contracts/work-orders/states';
import { queryFor } from '../../api/query.ts';
import { daysBetween } from '../../format/dates.ts';
import { countOf } from '../../format/numbers.ts';

export const managerBoardQuery = queryFor(workOrderOperations.managerBoard, { months: 12 });
export type ManagerBoard = Reply<typeof workOrderOperations.managerBoard>;
export type HouseUnit = ManagerBoard['units'][number];

export const ballWords: Record<BallHolder, string> = {
  'front-desk': 'Front desk',
  'parts-room': 'Parts room',
  technician: 'Technicians',
  inspector: 'Inspectors',
  manager: 'Manager',
  customer: 'Customer',
  nobody: 'Nobody',
};

/** How a unit's promise stands today. */
export function promiseOf(unit: HouseUnit, today: string): 'late' | 'this-week' | 'later' | 'none' {
  if (unit.promisedOn === null) return 'none';
  if (unit.late || unit.promisedOn < today) return 'late';
  return daysBetween(today, unit.promisedOn) <= 7 ? 'this-week' : 'later';
}

/** The one sentence on top: how many units, which promises, and who has the most of them in hand. */
export function houseSentence(units: readonly HouseUnit[], today: string): string {
  if (units.length === 0) return 'No unit is in the house.';
  const late = units.filter((unit) => promiseOf(unit, today) === 'late').length;
  const week = units.filter((unit) => promiseOf(unit, today) === 'this-week').length;
  const promises =
    late + week === 0
      ? 'no promise falls this week and none is late'
      : `${countOf(late, 'promise')} late, ${week} to keep this week`;
  const [most] = handsOf(units);
  const where = most ? `; ${most.units} wait for ${ballWords[most.ball].toLowerCase()}` : '';
  return `${countOf(units.length, 'unit')} in the house: ${promises}${where}.`;
}

/** How many promises finished units kept, over the months the board looks back. */
export function keptWords(board: ManagerBoard): string {
  const promised = board.turnaround.reduce((sum, row) => sum + row.promised, 0);
  const kept = board.turnaround.reduce((sum, row) => sum + row.kept, 0);
  if (promised === 0) return 'No finished unit had a promise yet.';
  return `Of ${countOf(promised, 'promise')} to finished units in the last twelve months, ${kept} were kept.`;
}

/** In whose hands the units are, most first. */
export function handsOf(units: readonly HouseUnit[]): { ball: BallHolder; units: number }[] {
  const counts = new Map<BallHolder, number>();
  for (const { ball } of units) counts.set(ball, (counts.get(ball) ?? 0) + 1);
  return [...counts].map(([ball, count]) => ({ ball, units: count })).sort((a, b) => b.units - a.units);
}

/** Late promises first, then the nearest promise, then the longest in the house. */
export function byUrgency(units: readonly HouseUnit[]): HouseUnit[] {
  return [...units].sort(
    (a, b) =>
      Number(b.late) - Number(a.late) ||
      (a.promisedOn ?? '9999').localeCompare(b.promisedOn ?? '9999') ||
      b.daysInHouse - a.daysInHouse,
  );
}

/** Finished units of one scope by month, oldest first. Medians of different scopes are not mixed: a reseal says nothing of an overhaul. */
export function monthsOf(board: ManagerBoard, scope: string): ManagerBoard['turnaround'] {
  return board.turnaround.filter((row) => row.scope === scope);
}

/** Scopes that finished units, most of them first. */
export function finishedScopes(board: ManagerBoard): { scope: Scope; units: number }[] {
  const counts = new Map<Scope, number>();
  for (const row of board.turnaround) counts.set(row.scope, (counts.get(row.scope) ?? 0) + row.units);
  return [...counts].map(([scope, units]) => ({ scope, units })).sort((a, b) => b.units - a.units);
}
