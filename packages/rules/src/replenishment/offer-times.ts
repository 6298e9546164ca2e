import { addDays } from '../dates/index.ts';

/** First and last day an offer holds; null where nobody says. */
export interface OfferTime {
  readonly validFrom: string | null;
  readonly validUntil: string | null;
}

const earliest = '0000-01-01';
const latest = '9999-12-31';
const start = ({ validFrom }: OfferTime) => validFrom ?? earliest;
const end = ({ validUntil }: OfferTime) => validUntil ?? latest;

/** Whether an offer holds on a day; its first and last day count. */
export function offerHolds(offer: OfferTime, day: string): boolean {
  return start(offer) <= day && day <= end(offer);
}

/**
 * Where an offer stands beside the others of the same supplier and part, so that on each day there is one price: one that began
 * earlier ends the day before it, and one that begins with it or after it, and before it ends, is in its way.
 *
 * Source: common practice, no source.
 *
 * @example placeOffer([{ validFrom: null, validUntil: null }], { validFrom: '2027-01-01', validUntil: null })
 *   // { ends: [{ of: …, validUntil: '2026-12-31' }], inTheWay: [] }
 */
export function placeOffer<Other extends OfferTime>(
  others: readonly Other[],
  wanted: OfferTime,
): { ends: { readonly of: Other; readonly validUntil: string }[]; inTheWay: Other[] } {
  const meeting = others.filter((other) => start(other) <= end(wanted) && start(wanted) <= end(other));
  const { validFrom } = wanted;
  const earlier = validFrom === null ? [] : meeting.filter((other) => start(other) < validFrom);
  return {
    ends: earlier.map((of) => ({ of, validUntil: addDays(validFrom as string, -1) })),
    inTheWay: meeting.filter((other) => !earlier.includes(other)),
  };
}
