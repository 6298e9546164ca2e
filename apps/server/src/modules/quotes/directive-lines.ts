import { addMonths } from '@hubwright/rules/dates';
import { fromDbDate } from '../../platform/database/dates.ts';
import { type Standing, standingsOnVisit } from '../directives/public.ts';
import type { Models, PricedLine } from './priced-line.ts';

/** How far ahead what falls due is named where no interval is begun. From practice, no source: the year until the next annual inspection. */
const monthsAhead = 12;

type Asked = { readonly workOrderId: string; readonly today: string };

/**
 * What the directives ask of this unit: open ones at the shop's price for each part they concern, and, without a price, what was put off,
 * what somebody has to look at first and what falls due before the unit is due again, so that the customer knows before it flies.
 */
export async function directiveLines(models: Models, { workOrderId, today }: Asked): Promise<PricedLine[]> {
  const { standings, records } = await standingsOnVisit(models, { workOrderId, today });
  const horizon = await horizonOf(models, { workOrderId, today });
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
    if (state === 'open' || (state === 'complied' && doneHere(one))) return [lineOf(one, priceOf(one))];
    if (state === 'undecided' || state === 'deferred') return [lineOf(one, 0)];
    const isNear = until !== null && (until.hoursTenths !== null || (until.date ?? '9') <= horizon);
    if (state === 'not-due' && isNear) return [lineOf(one, 0, '; it can be done on this visit')];
    return state === 'complied' && isNear ? [lineOf(one, 0)] : [];
  });
}

/** Open ones that no approved quote of this order names: issued, or come to apply, after the customer agreed. */
export async function directivesNotQuoted(models: Models, { workOrderId, today }: Asked): Promise<PricedLine[]> {
  const quoted = await models.quoteLine.findMany({
    where: { kind: 'directive', quote: { workOrderId, state: 'approved' } },
    select: { directiveId: true, itemId: true, description: true, amountMinor: true },
  });
  const { standings } = await standingsOnVisit(models, { workOrderId, today });
  const isQuoted = (one: Standing) =>
    quoted.some(({ directiveId, itemId, description, amountMinor }) =>
      directiveId === null
        ? description.startsWith(titleOf(one))
        : // What was named without a price, as not due or to be looked at, is agreed to by nobody.
          directiveId === one.directive.id && itemId === one.itemId && (amountMinor > 0 || priceOf(one) === 0),
    );
  return standings
    .filter((one) => one.state === 'open' && one.directive.binding === 'required' && !isQuoted(one))
    .map((one) => lineOf(one, priceOf(one)));
}

/** The day an interval that begins now ends by the calendar, for an overhaul; a year on for other work, or where the manual names no months. */
async function horizonOf(models: Models, { workOrderId, today }: Asked): Promise<string> {
  const year = addMonths(today, monthsAhead);
  const workOrder = await models.workOrder.findUnique({ where: { id: workOrderId } });
  if (workOrder?.scope !== 'overhaul') return year;
  const { revisionId, modelId, applicationId } = workOrder;
  const rules = await models.tboRule.findMany({
    where: { revisionId, modelId, months: { not: null }, OR: [{ applicationId: null }, { applicationId }] },
    select: { months: true },
  });
  // The longest that may apply: what is named without need does no harm.
  return [year, ...rules.map(({ months }) => addMonths(today, months ?? 0))].sort().at(-1) ?? year;
}

/** What is only recommended is named; the customer says whether it is wanted. */
function priceOf({ directive }: Standing): number {
  return directive.binding === 'required' ? directive.labourMinor : 0;
}

function titleOf({ called, directive }: Standing): string {
  return `${called} of ${fromDbDate(directive.issuedOn)}, ${directive.title}`;
}

function lineOf(one: Standing, amountMinor: number, more = ''): PricedLine {
  const { directive, name, reason, itemId } = one;
  const required = directive.binding === 'required' ? '' : ' (recommended, not in this price)';
  return {
    kind: 'directive',
    description: `${titleOf(one)}${required}, ${name}: ${reason}${more}`,
    ...{ directiveId: directive.id, itemId },
    ...{ partId: null, findingId: null, quantity: 1, unitPrice: '', amountMinor, taxable: true },
  };
}
