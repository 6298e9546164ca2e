import { freezerOperations } from '@hubwright/contracts/inventory/freezer-operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import type { EquipmentKind, InstrumentKind } from '@hubwright/contracts/manuals/words';
import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { type TravelerDetail, travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { diameterUnknown, mostBend } from '@hubwright/rules/blades';
import { judge } from '@hubwright/rules/limits';
import { queryFor } from '../../api/query.ts';
import { type Filled, fieldsLeft } from './process-form.ts';

export const travelerQuery = (travelerId: string) => queryFor(travelerOperations.traveler, { travelerId });
export const travelersQuery = (workOrderId: string) => queryFor(travelerOperations.listTravelers, { workOrderId });
export const instrumentsQuery = (kind: InstrumentKind) =>
  queryFor(processOperations.listInstruments, { kind, limit: 100 });
export const equipmentQuery = (kind: EquipmentKind) =>
  queryFor(equipmentOperations.listEquipment, { kind, limit: 100 });
/** Accepted lots of one part number, however they are kept. */
export const lotsQuery = (partNumber: string) =>
  queryFor(inventoryOperations.listLots, { search: partNumber, state: 'accepted', limit: 100 });
export const frozenLotsQuery = queryFor(freezerOperations.listFrozenLots, {});

export type Traveler = TravelerDetail;
export type Step = Traveler['steps'][number];
export type Measure = Step['measures'][number];
export type SignOff = Step['signOffs'][number];

/** Values as typed, by measure; nothing is ever filled in beforehand. */
export type Entries = Readonly<Record<string, string>>;

const decimalText = /^-?\d{1,12}(\.\d{1,8})?$/;

export type Standing = 'missing' | 'unreadable' | 'inside' | 'outside';

/** The limits of a measure now: as the manual has them or, where they go by a chart, at what was read. Null: none is allowed there. */
export function limitsOf(
  measure: Measure,
  { measures, entries }: { measures: readonly Measure[]; entries: Entries },
): { low: string | null; high: string | null } | 'not-read' | null {
  const { chart, low, high } = measure;
  if (!chart) return { low, high };
  const at = entries[measures.find(({ name }) => name === chart.by)?.id ?? ''];
  if (!at || !decimalText.test(at)) return 'not-read';
  const most = mostBend(chart.points, at);
  return most === null ? null : { low, high: most };
}

/** Where a typed value stands against the limits of its measure, by the rule of the revision. */
export function standingOf(measure: Measure, read: { measures: readonly Measure[]; entries: Entries }): Standing {
  const text = read.entries[measure.id];
  if (text === undefined || text === '') return 'missing';
  if (!decimalText.test(text)) return 'unreadable';
  const limits = limitsOf(measure, read);
  if (limits === 'not-read') return 'missing';
  if (limits === null) return 'outside';
  const { low, high } = limits;
  // A value without a limit is recorded.
  if (low === null && high === null) return 'inside';
  const { decimals, method } = measure;
  const limit = { ...(low === null ? {} : { low: Number(low) }), ...(high === null ? {} : { high: Number(high) }) };
  return judge(Number(text), { ...limit, decimals, method }).pass ? 'inside' : 'outside';
}

/** Whether the entered values make the step pass, fail, or are not all there yet. */
export function verdictOf({ measures }: Step, entries: Entries): 'incomplete' | 'pass' | 'fail' {
  const standings = measures.map((measure) => standingOf(measure, { measures, entries }));
  if (standings.some((standing) => standing === 'missing' || standing === 'unreadable')) return 'incomplete';
  return standings.includes('outside') ? 'fail' : 'pass';
}

/** What still keeps the step from being signed, in words; empty when nothing does. */
export function missingOf(
  step: Step,
  {
    entries,
    instrumentId,
    filled,
    sheet,
  }: {
    entries: Entries;
    instrumentId: string | null;
    filled: Filled;
    sheet: { readonly missing: string } | undefined;
  },
): string {
  const { measures } = step;
  const read = measures.filter((measure) => ['inside', 'outside'].includes(standingOf(measure, { measures, entries })));
  const values = read.length < measures.length ? [`${read.length} of ${measures.length} values entered`] : [];
  const instrument = step.instrumentKind && instrumentId === null ? ['the instrument used is not chosen'] : [];
  const left = fieldsLeft(step.form, filled);
  const form = left.length > 0 ? [`${left.join(', ')} not entered`] : [];
  const waits = measures.some(({ basis }) => basis === diameterUnknown)
    ? ['the current diameter is not on record']
    : [];
  const said = [...waits, ...values, ...(sheet?.missing ? [sheet.missing] : []), ...form, ...instrument];
  return said.length === 0 ? '' : `Before it can be signed: ${said.join('; ')}.`;
}

/** The sign-off that counts: the one no other corrects. */
export function currentSignOff(step: Step): SignOff | undefined {
  return step.signOffs.findLast((signOff) => signOff.supersededById === null && signOff.countersignsId === null);
}
