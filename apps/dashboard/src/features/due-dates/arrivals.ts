import { arrivalOperations } from '@hubwright/contracts/due-dates/arrival-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';

export interface ArrivalsAsked {
  readonly months?: number;
  readonly customerId?: string;
  readonly modelId?: string;
}
export type Arrivals = Reply<typeof arrivalOperations.expectedArrivals>;

export const arrivalsQuery = (asked: ArrivalsAsked = {}) => queryFor(arrivalOperations.expectedArrivals, asked);

/** The next three months in one sentence: required and recommended told apart, both only where the shop assumes a share. */
export function arrivalsSentence({ months, assumption }: Arrivals): string {
  const next = months.slice(0, 3);
  const sum = (of: (month: Arrivals['months'][number]) => number) =>
    Math.round(next.reduce((total, month) => total + of(month), 0));
  const required = sum((month) => month.required.expected);
  const recommended = sum((month) => month.recommended.expected);
  const counted =
    assumption.recommendedPercent === null
      ? ''
      : ` Counting ${assumption.recommendedPercent} in a hundred of those, as the shop assumes: about ${sum((month) => month.counted?.expected ?? 0)} in all.`;
  return `In this month and the next two about ${required} are likely to come due by a required interval and ${recommended} by a recommended one.${counted}`;
}
