import {
  type BuyingCosts,
  type DeliveryRecord,
  deliveryRecord,
  leadTime,
  type SuggestInput,
} from '@hubwright/rules/replenishment';
import type { DeliveryRow } from '../purchasing/public.ts';
import type { CandidateRow, OfferRow } from './candidate-rows.ts';
import type { Demand } from './demand.ts';

/** A part with one way to buy it, and the question put about it. */
export interface Asked {
  readonly candidate: CandidateRow;
  readonly offer: OfferRow | null;
  readonly demand: Demand;
  readonly question: SuggestInput;
}

export interface Known {
  readonly today: string;
  readonly costs: BuyingCosts;
  readonly demand: (partIds: readonly string[]) => Demand;
  readonly deliveries: readonly DeliveryRow[];
}

/** One question for each part and each supplier of it; a part nobody is named for is asked about as its own data says. */
export function questionsOf(candidates: readonly CandidateRow[], known: Known): Asked[] {
  const records = recordsOf(known.deliveries);
  return candidates.flatMap((candidate) => {
    const demand = known.demand(candidate.covers.map(({ id }) => id));
    const { have, onOrder, usage, found } = candidate;
    const offers = candidate.offers.length > 0 ? candidate.offers : [null];
    return offers.map((offer) => ({
      ...{ candidate, offer, demand },
      question: {
        ...{ today: known.today, usage, have, onOrder, shortages: demand.shortages },
        ...(demand.foreseen.length > 0 ? { found, free: Math.max(0, have + onOrder - demand.taken) } : {}),
        ...{ shelfLifeMonths: candidate.shelfLifeMonths, costs: known.costs },
        offer: termsOf(candidate, offer, records),
      },
    }));
  });
}

type Records = ReadonlyMap<string, DeliveryRecord | undefined>;

function termsOf(candidate: CandidateRow, offer: OfferRow | null, records: Records): SuggestInput['offer'] {
  if (!offer) {
    const breaks = [{ from: 1, unitPrice: Number(candidate.unitPrice) }];
    return { lead: leadTime(candidate.leadTimeDays, {}), packSize: candidate.packSize, minimum: 1, breaks };
  }
  const part = records.get(`${offer.supplierId} ${candidate.part.id}`);
  const supplier = records.get(offer.supplierId);
  return {
    lead: leadTime(offer.leadTimeDays, { part, supplier }),
    ...{ packSize: offer.packSize, minimum: offer.minimum },
    breaks: offer.breaks.map(({ from, unitPrice }) => ({ from, unitPrice: Number(unitPrice) })),
  };
}

/** What each supplier's deliveries say, in all and of each part. */
function recordsOf(deliveries: readonly DeliveryRow[]): Records {
  const made = new Map<string, DeliveryRow[]>();
  for (const row of deliveries)
    for (const key of [row.supplierId, `${row.supplierId} ${row.part.id}`]) {
      const rows = made.get(key);
      if (rows) rows.push(row);
      else made.set(key, [row]);
    }
  return new Map([...made].map(([key, rows]) => [key, deliveryRecord(rows)]));
}
