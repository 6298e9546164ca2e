import type { Meter } from '@hubwright/contracts/customers/operations';
import type { UseCategory } from '@hubwright/contracts/manuals/service-limits';
import type { DeclaredEvent, Scope } from '@hubwright/contracts/manuals/words';
import type { Reply, Sent } from '@hubwright/contracts/operation';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import type { Paper } from '@hubwright/contracts/work-orders/states';
import { type ProblemError, problemFrom } from '../../api/problem.ts';
import { queryFor } from '../../api/query.ts';
import { parseHours } from '../../format/numbers.ts';
import type { Found } from '../../ui/SearchBox.tsx';
import { isOnePiece } from './arrival-words.ts';

type Arrival = Sent<typeof workOrderOperations.receiveUnit>;
export type Returning = Reply<typeof workOrderOperations.returningUnit>['rows'][number];
export const returningQuery = (serial: string, modelId: string) =>
  queryFor(workOrderOperations.returningUnit, { serial, modelId });

/** Hours as typed; unknown is said, never left out. */
export interface HoursDraft {
  readonly text: string;
  readonly isUnknown: boolean;
}
export const noHours: HoursDraft = { text: '', isUnknown: false };
const unknownHours: HoursDraft = { text: '', isUnknown: true };

export interface PartDraft {
  readonly kind: 'hub' | 'blade';
  readonly position: string;
  readonly partNumber: string;
  readonly serial: string;
  readonly isUnreadable: boolean;
  readonly sinceNew: HoursDraft;
  readonly sinceOverhaul: HoursDraft;
  readonly cyclesSinceNew: HoursDraft;
}

export interface LooseDraft {
  readonly description: string;
  readonly quantity: string;
}

/** A unit as it is being booked in. */
export interface ArrivalDraft {
  readonly customer: Found | null;
  readonly aircraftId: string | null;
  readonly model: Found | null;
  readonly applicationId: string | null;
  readonly use: UseCategory | null;
  readonly madeOn: string;
  readonly scope: Scope | null;
  readonly serial: string;
  readonly isUnreadable: boolean;
  readonly parts: readonly PartDraft[];
  readonly sinceNew: HoursDraft;
  readonly sinceOverhaul: HoursDraft;
  readonly cyclesSinceNew: HoursDraft;
  readonly meter: Meter | null;
  readonly meterReading: string;
  readonly reason: string;
  readonly events: readonly DeclaredEvent[];
  readonly paperwork: readonly Paper[];
  readonly paperworkNote: string;
  readonly looseItems: readonly LooseDraft[];
  readonly isUrgent: boolean;
  readonly accidentHold: string;
  readonly receivedOn: string;
}

export const nothingArrived: ArrivalDraft = {
  customer: null,
  aircraftId: null,
  model: null,
  applicationId: null,
  use: null,
  madeOn: '',
  scope: null,
  serial: '',
  isUnreadable: false,
  parts: [],
  sinceNew: noHours,
  sinceOverhaul: noHours,
  // Few units are limited in cycles: unknown until somebody says them.
  cyclesSinceNew: unknownHours,
  meter: null,
  meterReading: '',
  reason: '',
  events: [],
  paperwork: [],
  paperworkNote: '',
  looseItems: [],
  isUrgent: false,
  accidentHold: '',
  receivedOn: '',
};

const emptyPart = {
  partNumber: '',
  serial: '',
  isUnreadable: false,
  sinceNew: unknownHours,
  sinceOverhaul: unknownHours,
  cyclesSinceNew: unknownHours,
};

/** One hub and as many blades as the model has, nothing filled in. */
export function partsOf(model: { kind: string; pitch: string; bladeCount: number | null }): PartDraft[] {
  if (isOnePiece(model)) return [];
  const blades = Array.from({ length: model.bladeCount ?? 0 }, (_, at) => `blade ${at + 1}`);
  return [
    { ...emptyPart, kind: 'hub', position: 'hub' },
    ...blades.map((position) => ({ ...emptyPart, kind: 'blade' as const, position })),
  ];
}

/** Part numbers and serials of the last visit. Hours are asked again: they went on counting. */
export function fromRecord(parts: readonly PartDraft[], record: Returning): PartDraft[] {
  return parts.map((part) => {
    const known = record.parts.find((each) => each.position === part.position);
    return known
      ? { ...part, partNumber: known.partNumber, serial: known.serial ?? '', isUnreadable: known.serial === null }
      : part;
  });
}

/** The blades' part number is usually one: an empty one goes by the first blade's. */
export function partNumberAt(parts: readonly PartDraft[], at: number): string {
  const part = parts[at];
  if (part?.partNumber !== '' || part.kind !== 'blade') return part?.partNumber ?? '';
  return parts.find((each) => each.kind === 'blade')?.partNumber ?? '';
}

function hours({ text, isUnknown }: HoursDraft): number | 'unknown' {
  return isUnknown ? 'unknown' : (parseHours(text) as number);
}

const isWhole = (text: string) => /^\d{1,7}$/.test(text.trim());

function cycles({ text, isUnknown }: HoursDraft): number | 'unknown' {
  return isUnknown ? 'unknown' : Number(text);
}

function hoursFaults(draft: ArrivalDraft) {
  const faulty = (at: string, { text, isUnknown }: HoursDraft) =>
    !isUnknown && parseHours(text) === undefined
      ? [{ pointer: at, detail: 'Write hours such as 1234.5, or say unknown' }]
      : [];
  const cycleFault = (at: string, { text, isUnknown }: HoursDraft) =>
    isUnknown || isWhole(text) ? [] : [{ pointer: at, detail: 'Write whole cycles, or say unknown' }];
  return [
    ...cycleFault('/times/sinceNewCycles', draft.cyclesSinceNew),
    ...faulty('/times/sinceNewTenths', draft.sinceNew),
    ...faulty('/times/sinceOverhaulTenths', draft.sinceOverhaul),
    ...(draft.meterReading === '' ? [] : faulty('/times/meterTenths', { text: draft.meterReading, isUnknown: false })),
    ...draft.parts.flatMap((part, at) => [
      ...faulty(`/parts/${at}/sinceNewTenths`, part.sinceNew),
      ...faulty(`/parts/${at}/sinceOverhaulTenths`, part.sinceOverhaul),
      ...cycleFault(`/parts/${at}/sinceNewCycles`, part.cyclesSinceNew),
    ]),
  ];
}

function serialFaults(draft: ArrivalDraft) {
  const missing = (at: string, serial: string, isUnreadable: boolean) =>
    serial.trim() === '' && !isUnreadable
      ? [{ pointer: at, detail: 'Enter the serial, or say that it is not readable yet' }]
      : [];
  return [
    ...missing('/serial', draft.serial, draft.isUnreadable),
    ...draft.parts.flatMap((part, at) => missing(`/parts/${at}/serial`, part.serial, part.isUnreadable)),
  ];
}

/** What only the form can know: hours that are no hours, and serials neither typed nor called unreadable. */
export function gapsOf(draft: ArrivalDraft): ProblemError | null {
  const errors = [...serialFaults(draft), ...hoursFaults(draft)];
  if (errors.length === 0) return null;
  return problemFrom(422, { type: '/problems/invalid-input', detail: 'Nothing was sent yet.', errors });
}

const given = <T>(key: string, value: T | null | ''): Record<string, T> =>
  value === null || value === '' ? {} : { [key]: value as T };

/** The draft as the command takes it. Call `gapsOf` first. */
export function arrivalToSend(draft: ArrivalDraft): Arrival {
  return {
    customerId: draft.customer?.id ?? '',
    modelId: draft.model?.id ?? '',
    ...given('aircraftId', draft.aircraftId),
    ...given('applicationId', draft.applicationId),
    ...given('use', draft.use),
    ...given('madeOn', draft.madeOn),
    scope: draft.scope as Scope,
    serial: draft.isUnreadable ? null : draft.serial,
    parts: draft.parts.map((part, at) => ({
      kind: part.kind,
      position: part.position,
      partNumber: partNumberAt(draft.parts, at),
      serial: part.isUnreadable ? null : part.serial,
      sinceNewTenths: hours(part.sinceNew),
      sinceOverhaulTenths: hours(part.sinceOverhaul),
      sinceNewCycles: cycles(part.cyclesSinceNew),
    })),
    times: {
      sinceNewTenths: hours(draft.sinceNew),
      sinceOverhaulTenths: hours(draft.sinceOverhaul),
      sinceNewCycles: cycles(draft.cyclesSinceNew),
      ...given('meter', draft.meter),
      ...(draft.meterReading === '' ? {} : { meterTenths: parseHours(draft.meterReading) as number }),
    },
    reason: draft.reason,
    events: [...draft.events],
    paperwork: [...draft.paperwork],
    paperworkNote: draft.paperworkNote,
    looseItems: draft.looseItems
      .filter((item) => item.description.trim() !== '')
      .map((item) => ({ description: item.description, quantity: Number(item.quantity) })),
    priority: draft.isUrgent ? 1 : 2,
    ...given('accidentHold', draft.accidentHold.trim()),
    ...given('receivedOn', draft.receivedOn),
  };
}
