import type { Reply } from '@hubwright/contracts/operation';
import type { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import { addDays, daysBetween } from '@hubwright/rules/dates';
import { priceAt, type Suggestion } from '@hubwright/rules/replenishment';
import { standingWords } from '../purchasing/public.ts';
import type { OfferRow } from './candidate-rows.ts';
import type { Asked } from './questions.ts';
import { whyOf } from './why.ts';

export type SuggestionRow = Reply<typeof buyingOperations.listSuggestions>['rows'][number];

interface Answered {
  readonly asked: Asked;
  readonly found: Suggestion;
}

/** One row a part: from the most preferred supplier that may be ordered from today, with what the others would ask beside it. */
export function suggestionRows(
  asked: readonly Asked[],
  answers: readonly (Suggestion | undefined)[],
  today: string,
): SuggestionRow[] {
  const byPart = new Map<string, Answered[]>();
  asked.forEach((one, at) => {
    const found = answers[at];
    if (!found) return;
    const { id } = one.candidate.part;
    byPart.set(id, [...(byPart.get(id) ?? []), { asked: one, found }]);
  });
  const rows = [...byPart.values()].flatMap((ways) => {
    const chosen = ways.find(({ asked: { offer } }) => offer && mayOrder(offer, today)) ?? ways[0];
    return chosen ? [rowOf(chosen, ways, today)] : [];
  });
  const key = ({ orderBy, part }: SuggestionRow) => `${orderBy} ${part.number}`;
  return rows.sort((one, other) => (key(one) < key(other) ? -1 : 1));
}

function mayOrder({ approvedUntil, allowed }: OfferRow, today: string): boolean {
  return allowed || (approvedUntil !== null && approvedUntil >= today);
}

function rowOf(chosen: Answered, ways: readonly Answered[], today: string): SuggestionRow {
  const { asked, found } = chosen;
  const { candidate, offer, question, demand } = asked;
  const { buy, orderBy } = found;
  return {
    part: candidate.part,
    supplier: offer
      ? {
          ...{ id: offer.supplierId, name: offer.name, leastOrder: offer.leastOrder, mayOrder: mayOrder(offer, today) },
          standing: standingWords(offer.name, offer.approvedUntil, today),
        }
      : null,
    ...{ quantity: buy.quantity, need: found.need, short: found.short, packSize: question.offer.packSize },
    unitPrice: priceAt(offer?.breaks ?? [], buy.quantity) ?? candidate.unitPrice,
    ...{ cost: buy.cost, orderBy, isOverdue: orderBy < today },
    arrives: addDays(today, question.offer.lead.days),
    firstNeed: firstNeed(demand.shortages),
    by: { ...found.by, finding: found.by.finding + found.findingsGap },
    leadDays: question.offer.lead.days,
    because: whyOf(asked, found),
    later: [...found.later],
    others: ways.filter((way) => way !== chosen).flatMap((way) => otherOf(way, chosen, today)),
  };
}

function firstNeed(shortages: Asked['demand']['shortages']): string | null {
  return shortages.flatMap(({ needBy, quantity }) => (quantity > 0 ? [needBy] : [])).sort()[0] ?? null;
}

/** What another supplier would ask, and why it was not chosen. */
function otherOf({ asked, found }: Answered, chosen: Answered, today: string): SuggestionRow['others'] {
  const { offer, question } = asked;
  if (!offer) return [];
  const { quantity, cost } = found.buy;
  const unitPrice = priceAt(offer.breaks, quantity) ?? '0';
  const days = question.offer.lead.days - chosen.asked.question.offer.lead.days;
  const comes = days === 0 ? 'as soon' : `${Math.abs(days)} days ${days > 0 ? 'later' : 'sooner'}`;
  const why = mayOrder(offer, today) ? 'less preferred' : standingWords(offer.name, offer.approvedUntil, today);
  const saves = daysBetween(found.orderBy, chosen.found.orderBy);
  const until = saves === 0 ? '' : `; could be ordered ${Math.abs(saves)} days ${saves < 0 ? 'later' : 'earlier'}`;
  const sentence = `${quantity} at ${unitPrice} come to ${cost}, ${comes}: ${why}${until}`.replace(/\.?$/, '.');
  const supplier = { id: offer.supplierId, name: offer.name };
  return [{ supplier, quantity, unitPrice, cost, orderBy: found.orderBy, sentence }];
}
