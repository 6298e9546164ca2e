import type { InstrumentKind } from '@hubwright/contracts/manuals/words';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { type TravelerDetail, travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { judge } from '@hubwright/rules/limits';
import { queryFor } from '../../api/query.ts';

export const travelerQuery = (travelerId: string) => queryFor(travelerOperations.traveler, { travelerId });
export const travelersQuery = (workOrderId: string) => queryFor(travelerOperations.listTravelers, { workOrderId });
export const instrumentsQuery = (kind: InstrumentKind) =>
  queryFor(processOperations.listInstruments, { kind, limit: 100 });

export type Traveler = TravelerDetail;
export type Step = Traveler['steps'][number];
export type Measure = Step['measures'][number];
export type SignOff = Step['signOffs'][number];

/** Values as typed, by measure; nothing is ever filled in beforehand. */
export type Entries = Readonly<Record<string, string>>;

const decimalText = /^-?\d{1,12}(\.\d{1,8})?$/;

/** Where a typed value stands against the limits of its measure, by the rule of the revision. */
export function standingOf(
  measure: Measure,
  text: string | undefined,
): 'missing' | 'unreadable' | 'inside' | 'outside' {
  if (text === undefined || text === '') return 'missing';
  if (!decimalText.test(text)) return 'unreadable';
  const { low, high, decimals, method } = measure;
  const limit = {
    ...(low === null ? {} : { low: Number(low) }),
    ...(high === null ? {} : { high: Number(high) }),
    decimals,
    method,
  };
  return judge(Number(text), limit).pass ? 'inside' : 'outside';
}

/** Whether the entered values make the step pass, fail, or are not all there yet. */
export function verdictOf(step: Step, entries: Entries): 'incomplete' | 'pass' | 'fail' {
  const standings = step.measures.map((measure) => standingOf(measure, entries[measure.id]));
  if (standings.some((standing) => standing === 'missing' || standing === 'unreadable')) return 'incomplete';
  return standings.includes('outside') ? 'fail' : 'pass';
}

/** What still keeps the step from being signed, in words; empty when nothing does. */
export function missingOf(step: Step, entries: Entries, instrumentId: string | null): string {
  const read = step.measures.filter((measure) =>
    ['inside', 'outside'].includes(standingOf(measure, entries[measure.id])),
  ).length;
  const values = read < step.measures.length ? [`${read} of ${step.measures.length} values entered`] : [];
  const instrument = step.instrumentKind && instrumentId === null ? ['the instrument used is not chosen'] : [];
  const said = [...values, ...instrument];
  return said.length === 0 ? '' : `Before it can be signed: ${said.join(', ')}.`;
}

/** The sign-off that counts: the one no other corrects. */
export function currentSignOff(step: Step): SignOff | undefined {
  return step.signOffs.findLast((signOff) => signOff.supersededById === null && signOff.countersignsId === null);
}
