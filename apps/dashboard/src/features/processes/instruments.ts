import type { Reply } from '@hubwright/contracts/operation';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { queryFor } from '../../api/query.ts';
import { daysBetween, dueWords } from '../../format/dates.ts';
import type { State } from '../../ui/StateMark.tsx';

export type Instrument = Reply<typeof processOperations.listInstruments>['rows'][number];
export type Calibration = Reply<typeof processOperations.listCalibrations>['rows'][number];

/** The most overdue first: enough to name those nobody may use. */
export const overdueInstrumentsQuery = queryFor(processOperations.listInstruments, { order: 'due', limit: 30 });

/** What its certificate says it is known to, quantity by quantity. */
export function doubtsOf({ uncertainty, unit, moreDoubts }: Instrument) {
  return [...(uncertainty !== null ? [{ uncertainty, unit: unit ?? '' }] : []), ...moreDoubts];
}

const soonDays = 60;

/** May it be used today, and for how long still. */
export function calibrationMark(row: Instrument, today: string): { state: State; word: string } {
  if (!row.inService) return { state: 'hold', word: 'out of service' };
  if (!row.inCalibration) return { state: 'stop', word: 'overdue: do not use' };
  if (daysBetween(today, row.calibrationDueOn) > soonDays) return { state: 'passed', word: 'in calibration' };
  return { state: 'waiting', word: `due ${dueWords(row.calibrationDueOn, today)}` };
}
