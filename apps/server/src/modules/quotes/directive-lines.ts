import { addMonths } from '@hubwright/rules/dates';
import { fromDbDate } from '../../platform/database/dates.ts';
import { type Standing, standingsOnVisit } from '../directives/public.ts';
import type { Models, PricedLine } from './priced-line.ts';

/** How far ahead what falls due is named. From practice, no source: the year until the next annual inspection. */
const monthsAhead = 12;

/**
 * What the directives ask of this unit: open ones at the shop's price for each part they concern, and, without a price, what was put off,
 * what somebody has to look at first and what falls due again within a year, so that the customer knows before the unit flies.
 */
export async function directiveLines(
  models: Models,
  { workOrderId, today }: { workOrderId: string; today: string },
): Promise<PricedLine[]> {
  const { standings, records } = await standingsOnVisit(models, { workOrderId, today });
  const doneHere = (one: Standing) =>
    records.some(
      (record) =>
        record.workOrderId === workOrderId &&
        record.outcome === 'done' &&
        record.directiveId === one.directive.id &&
        record.itemId === one.itemId,
    );
  return standings.flatMap((one) => {
    const { state, until } = one;
    const { binding, labourMinor } = one.directive;
    // What is only recommended is named; the customer says whether it is wanted.
    const price = binding === 'required' ? labourMinor : 0;
    if (state === 'open' || (state === 'complied' && doneHere(one))) return [lineOf(one, price)];
    if (state === 'undecided' || state === 'deferred') return [lineOf(one, 0)];
    const isNear =
      until !== null && (until.hoursTenths !== null || (until.date ?? '9') <= addMonths(today, monthsAhead));
    return state === 'complied' && isNear ? [lineOf(one, 0)] : [];
  });
}

function lineOf({ called, directive, name, reason }: Standing, amountMinor: number): PricedLine {
  const required = directive.binding === 'required' ? '' : ' (recommended, not in this price)';
  return {
    kind: 'directive',
    description: `${called} of ${fromDbDate(directive.issuedOn)}, ${directive.title}${required}, ${name}: ${reason}`,
    ...{ partId: null, findingId: null, quantity: 1, unitPrice: '', amountMinor, taxable: true },
  };
}
