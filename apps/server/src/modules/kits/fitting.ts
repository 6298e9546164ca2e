import { type SourceClass, sourceClassTitles } from '@hubwright/contracts/inventory/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Misfit, misfit, type Need } from '@hubwright/rules/stock';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { StockLot } from '../inventory/public.ts';
import type { Kit } from './kit.ts';

const notAccepted: Partial<Record<StockLot['facts']['state'], string>> = {
  quarantine: 'in quarantine',
  rejected: 'rejected',
  suspected: 'held as a suspected unapproved part',
};

/** What a position of this kit asks of a lot. */
export function needOf(kit: Kit, parts: string[], today: string): Omit<Need, 'quantity'> {
  const { customer } = kit.workOrder;
  return {
    parts,
    today,
    buildOn: fromDbDate(kit.needBy),
    acceptedSources: customer.acceptedSources,
    owner: customer.id,
  };
}

/** Why a lot may not be used here, as the problem that says so; undefined when it may. */
export function misfitProblem(kit: Kit, lot: StockLot, need: Omit<Need, 'quantity'>): Problem | undefined {
  const reason = misfit(lot.facts, need);
  return reason && asProblem(kit, lot, reason);
}

/** The same reason as words to put behind a part: “LOT-00012 expired on 2026-03-01”. */
export function misfitWords(kit: Kit, lot: StockLot, reason: Misfit): string {
  return asProblem(kit, lot, reason).detail;
}

function asProblem(kit: Kit, lot: StockLot, reason: Misfit): Problem {
  const { expires, source, state } = lot.facts;
  const at = { lot: lot.code, part: lot.partNumber };
  switch (reason) {
    case 'wrong-part':
      return new Problem('part-not-on-kit', `${kit.code} needs no ${lot.partNumber} there`, at);
    case 'not-accepted':
      return new Problem('lot-not-accepted', `${lot.code} is ${notAccepted[state] ?? 'not accepted'}`, at);
    case 'no-certificate':
      return new Problem('certificate-missing', `${lot.code} has no certificate`, at);
    case 'expired':
      return new Problem('lot-expired', `${lot.code} expired on ${expires}`, at);
    case 'short-life':
      return new Problem('shelf-life-short', `${lot.code} expires on ${expires}, too soon for the build`, at);
    case 'source-not-accepted':
      return sourceProblem(kit, lot, source as SourceClass);
    case 'other-owner':
      return new Problem('lot-other-owner', `${lot.code} belongs to ${lot.ownerName ?? 'another customer'}`, at);
  }
}

function sourceProblem(kit: Kit, lot: StockLot, source: SourceClass): Problem {
  const { name, acceptedSources } = kit.workOrder.customer;
  const accepted = acceptedSources.map((each) => sourceClassTitles[each as SourceClass]).join(', ') || 'none';
  return new Problem(
    'source-not-accepted',
    `${lot.code} is ${sourceClassTitles[source]}; ${name} accepts ${accepted}`,
    { lot: lot.code, source, accepted: acceptedSources },
  );
}
