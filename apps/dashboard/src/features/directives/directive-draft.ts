import type { directiveOperations } from '@hubwright/contracts/directives/operations';
import type { Sent } from '@hubwright/contracts/operation';
import { parseHours } from '../../format/numbers.ts';
import type { DirectiveRow } from './directives.ts';

export interface LineDraft {
  readonly key: number;
  readonly model: { readonly id: string; readonly designation: string } | null;
  readonly partNumber: string;
  readonly serialFrom: string;
  readonly serialTo: string;
}
export const links = ['supersedes', 'credits', 'ends'] as const;
export type Link = (typeof links)[number];
export interface OtherDraft {
  readonly id: string;
  readonly called: string;
  readonly says: readonly Link[];
}

export interface FirstDraft {
  readonly days: string;
  readonly months: string;
  readonly hours: string;
  readonly total: string;
}

export interface DirectiveDraft {
  readonly kind: DirectiveRow['kind'];
  readonly number: string;
  readonly revision: string;
  readonly title: string;
  readonly issuer: string;
  readonly issuedOn: string;
  readonly effectiveOn: string;
  readonly binding: DirectiveRow['binding'];
  readonly repeats: DirectiveRow['repeats'];
  readonly hours: string;
  readonly months: string;
  readonly endOfMonth: boolean;
  /** When it must be done first, as typed. */
  readonly first: FirstDraft;
  readonly action: string;
  readonly terminatingAction: string;
  readonly deferDays: string;
  readonly price: string;
  readonly lines: readonly LineDraft[];
  readonly others: readonly OtherDraft[];
}

export function newLine(key: number): LineDraft {
  return { key, model: null, partNumber: '', serialFrom: '', serialTo: '' };
}

export function newDraft(today: string): DirectiveDraft {
  return {
    ...{ kind: 'airworthiness-directive', number: '', revision: 'original', title: '', issuer: '', issuedOn: today },
    ...{ effectiveOn: today, binding: 'required', repeats: 'one-time', hours: '', months: '', endOfMonth: false },
    first: { days: '', months: '', hours: '', total: '' },
    ...{ action: '', terminatingAction: '', deferDays: '', price: '', lines: [newLine(0)], others: [] },
  };
}

type Input = Omit<Sent<typeof directiveOperations.issueDirective>, 'signature'>;

/** What is sent of a draft; undefined while a number in it is none. */
export function toSend(draft: DirectiveDraft, priceMinor: number | undefined): Input | undefined {
  const { hours, months, first, deferDays, lines, others, terminatingAction, price, ...said } = draft;
  const wait = draft.repeats === 'at-overhaul' ? {} : firstToSend(first);
  if (wait === undefined) return undefined;
  const isRecurring = draft.repeats === 'recurring';
  const tenths = hours.trim() === '' ? undefined : parseHours(hours);
  const whole = [months, deferDays].map((text) => (text.trim() === '' ? undefined : Number(text)));
  const [everyMonths, days] = whole;
  if (typeof tenths === 'string' || (hours.trim() !== '' && tenths === undefined)) return undefined;
  if (whole.some((value) => value !== undefined && !Number.isInteger(value))) return undefined;
  if (price.trim() !== '' && priceMinor === undefined) return undefined;
  const saying = (link: Link) => others.filter(({ says }) => says.includes(link)).map(({ id }) => id);
  return {
    ...said,
    binding: draft.kind === 'airworthiness-directive' ? 'required' : draft.binding,
    labourMinor: priceMinor ?? 0,
    lines: lines.map(lineToSend),
    ...{ supersedes: saying('supersedes'), credits: saying('credits'), ends: saying('ends') },
    ...(isRecurring && tenths !== undefined ? { everyHoursTenths: tenths } : {}),
    ...(isRecurring && everyMonths !== undefined ? { everyMonths } : {}),
    ...(draft.repeats !== 'one-time' && terminatingAction.trim() !== '' ? { terminatingAction } : {}),
    ...(days === undefined ? {} : { deferDays: days }),
    ...wait,
  };
}

/** Undefined while a number in it is none. */
function firstToSend(first: FirstDraft): Partial<Input> | undefined {
  const whole = (text: string) => (text.trim() === '' ? undefined : Number(text));
  const tenths = (text: string) => (text.trim() === '' ? undefined : parseHours(text));
  const [firstDays, firstMonths] = [whole(first.days), whole(first.months)];
  const [byHours, total] = [tenths(first.hours), tenths(first.total)];
  const isBad = (text: string, value: unknown) => text.trim() !== '' && !Number.isInteger(value);
  if (isBad(first.days, firstDays) || isBad(first.months, firstMonths)) return undefined;
  if (isBad(first.hours, byHours) || isBad(first.total, total)) return undefined;
  return {
    ...(firstDays === undefined ? {} : { firstDays }),
    ...(firstMonths === undefined ? {} : { firstMonths }),
    ...(typeof byHours === 'number' ? { firstHoursTenths: byHours } : {}),
    ...(typeof total === 'number' ? { firstTotalTenths: total } : {}),
  };
}

function lineToSend({ model, partNumber, serialFrom, serialTo }: LineDraft): Input['lines'][number] {
  return {
    ...(model ? { modelId: model.id } : {}),
    ...(partNumber.trim() === '' ? {} : { partNumber }),
    ...(serialFrom.trim() === '' ? {} : { serialFrom }),
    ...(serialTo.trim() === '' ? {} : { serialTo }),
  };
}
