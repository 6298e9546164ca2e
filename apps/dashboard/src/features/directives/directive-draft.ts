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
    ...{ action: '', terminatingAction: '', deferDays: '', price: '', lines: [newLine(0)], others: [] },
  };
}

type Input = Omit<Sent<typeof directiveOperations.issueDirective>, 'signature'>;

/** What is sent of a draft; undefined while a number in it is none. */
export function toSend(draft: DirectiveDraft, priceMinor: number | undefined): Input | undefined {
  const { hours, months, deferDays, lines, others, terminatingAction, price, ...said } = draft;
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
    ...(isRecurring && terminatingAction.trim() !== '' ? { terminatingAction } : {}),
    ...(days === undefined ? {} : { deferDays: days }),
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
