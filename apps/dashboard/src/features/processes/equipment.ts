import type { EquipmentKind } from '@hubwright/contracts/manuals/words';
import type { Reply } from '@hubwright/contracts/operation';
import { type EquipmentRow, equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { queryFor } from '../../api/query.ts';
import { daysBetween } from '../../format/dates.ts';
import type { State } from '../../ui/StateMark.tsx';

export type Equipment = EquipmentRow;
export type Check = Equipment['checks'][number];
export type CheckStanding = Equipment['standings'][number];
export type Log = Reply<typeof equipmentOperations.equipmentLog>;
export type Doubt = Reply<typeof equipmentOperations.listDoubts>['rows'][number];

export const equipmentQuery = queryFor(equipmentOperations.listEquipment, { limit: 200 });
export const logQuery = (equipmentId: string) => queryFor(equipmentOperations.equipmentLog, { equipmentId });

export const kindWords: Record<EquipmentKind, string> = {
  'strip-tank': 'Strip tank',
  'etch-tank': 'Etch tank',
  'anodise-tank': 'Anodise tank',
  'conversion-coat-tank': 'Conversion-coat tank',
  'cadmium-tank': 'Cadmium tank',
  'penetrant-line': 'Penetrant line',
  'magnetic-bench': 'Magnetic bench',
  'eddy-current-station': 'Eddy-current station',
};

/** How long before its end a result is said to end soon: common practice, no source. */
const soonHours = 4;

export interface Mark {
  readonly state: State;
  readonly word: string;
}

/** How one check stands, in shape and words; what holds today only is due tomorrow anyway and gives no alarm. */
export function standingMark(
  check: Check,
  standing: CheckStanding,
  { now, today }: { now: number; today: string },
): Mark {
  const { state, until, lastDay } = standing;
  const read = `${standing.value ?? ''} ${check.unit}`.trim();
  if (state === 'out') return { state: 'stop', word: `out of limits: ${check.confirm ? 'no' : read}` };
  if (state === 'missing')
    return { state: 'hold', word: check.due.by === 'day-of-use' ? 'not checked today' : 'never read' };
  const left = until === null ? undefined : Date.parse(until) - now;
  if (state === 'overdue' || (left !== undefined && left < 0)) return { state: 'stop', word: 'overdue' };
  if (left !== undefined && left <= soonHours * 3_600_000)
    return { state: 'hold', word: `due within ${Math.max(1, Math.ceil(left / 3_600_000))} h` };
  if (check.due.by === 'days' && lastDay !== null) {
    const days = daysBetween(today, lastDay);
    if (days < 0) return { state: 'stop', word: 'overdue' };
    if (days === 0) return { state: 'hold', word: 'due today' };
  }
  return { state: 'passed', word: check.confirm ? 'yes' : 'good' };
}

/** What is asked, in words. */
export function limitWords({ low, high, unit, confirm }: Check): string {
  if (confirm) return 'yes';
  const sides = [low === undefined ? '' : `from ${low}`, high === undefined ? '' : `to ${high}`].filter(Boolean);
  return `${sides.join(' ')} ${unit}`.trim();
}

export function dueWords({ due }: Check): string {
  if (due.by === 'day-of-use') return 'before the first part of the day';
  return due.by === 'hours' ? `every ${due.every} h` : `every ${due.every} days`;
}
