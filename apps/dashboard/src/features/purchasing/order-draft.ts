import type { Sent } from '@hubwright/contracts/operation';
import type { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { addDays } from '@hubwright/rules/dates';

/** A line as it is being written. Quantity and price are text until they are sent. */
export interface DraftLine {
  readonly partId: string;
  readonly number: string;
  readonly description: string;
  readonly issueUnit: string;
  readonly packSize: number;
  readonly quantity: string;
  readonly dueOn: string;
  readonly unitPrice: string;
}

/** What is known of a part to be ordered. */
export interface Wanted {
  readonly part: {
    readonly id: string;
    readonly number: string;
    readonly description: string;
    readonly issueUnit: string;
  };
  readonly quantity: number;
  readonly packSize: number;
  readonly leadTimeDays: number;
  readonly unitPrice: string;
}

/** A line as first offered: the suggested number, due when the usual lead time allows. */
export function draftOf(wanted: Wanted, today: string): DraftLine {
  const { part, quantity, packSize, leadTimeDays, unitPrice } = wanted;
  return {
    partId: part.id,
    number: part.number,
    description: part.description,
    issueUnit: part.issueUnit,
    packSize,
    quantity: quantity > 0 ? String(quantity) : '',
    dueOn: addDays(today, leadTimeDays),
    unitPrice,
  };
}

type NewLine = Sent<typeof purchasingOperations.raiseOrder>['lines'][number];

export function lineToSend({ partId, quantity, dueOn, unitPrice }: DraftLine): NewLine {
  return { partId, quantity: Number(quantity), dueOn, ...(unitPrice === '' ? {} : { unitPrice }) };
}
