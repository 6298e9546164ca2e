import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { Reply } from '@hubwright/contracts/operation';
import type { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import type { Suggestion } from '@hubwright/rules/replenishment';
import type { Asked } from './questions.ts';

export type Why = Reply<typeof buyingOperations.listSuggestions>['rows'][number]['because'][number];

/** Kit lines named one by one; the rest is one sentence. */
const named = 6;

/** Why so many and not another number: each step a sentence whose number leads to where it comes from. */
export function whyOf(asked: Asked, found: Suggestion): Why[] {
  return [
    ...insteadWhy(asked),
    ...shortWhy(asked),
    ...plannedWhy(asked, found),
    ...levelWhy(asked, found),
    ...needWhy(found, asked),
    leadWhy(asked),
    ...found.buy.because.slice(1).map((words) => fromOffer(asked, words)),
  ];
}

const tenths = (value: number) => String(Math.round(value * 10) / 10);
const percent = (share: number) => `${(share * 100).toFixed(1)} %`;

/** The old part is named, because it is what the kit asks for. */
function insteadWhy({ candidate, short }: Asked): Why[] {
  const { part, covers } = candidate;
  const asked = new Set(short.map(({ row }) => row.part.id));
  return covers
    .filter(({ id }) => id !== part.id && asked.has(id))
    .map(({ id, number }) => ({
      sentence: `${part.number} is ordered instead of ${number}, whose place it has taken.`,
      ...{ value: number, from: 'stock' as const, id },
    }));
}

function shortWhy({ short, candidate }: Asked): Why[] {
  const lines = short.slice(0, named).map(({ row, short: missing }) => ({
    sentence: `${partWords(missing, row.part)} short for ${row.kitCode} (${row.position || `line ${row.sequence}`}), needed ${row.needBy}.`,
    ...{ value: String(missing), from: 'kit' as const, id: row.kitId },
  }));
  const rest = short.slice(named);
  if (rest.length === 0) return lines;
  const pieces = rest.reduce((sum, line) => sum + line.short, 0);
  const sentence = `${pieces} more for ${rest.length} more kit lines.`;
  return [...lines, { sentence, value: String(pieces), from: 'usage', id: candidate.part.id }];
}

function plannedWhy({ question }: Asked, { short, now, later }: Suggestion): Why[] {
  if (short === 0 || later.length === 0) return [];
  const { perOrder, keepingRate } = question.costs;
  const words = `an order costs ${perOrder}, keeping a piece for a year ${percent(keepingRate)} of its price`;
  const sentence = `Of ${short} short, ${now} belong into this order: the others are needed so late that a second order is cheaper than keeping them (${words}).`;
  return [{ sentence, value: String(now), from: 'costs', id: null }];
}

function levelWhy({ question, candidate }: Asked, { level, gap }: Suggestion): Why[] {
  const { usage, costs, have, onOrder } = question;
  const { id } = candidate.part;
  if (!level) {
    const months = `${usage.length} whole months`;
    const words = usage.length < 3 ? `Usage is on record for ${months} only` : `None was used in ${months}`;
    return [{ sentence: `${words}: no stock level is kept.`, value: String(usage.length), from: 'usage', id }];
  }
  const used = usage.reduce((sum, pieces) => sum + pieces, 0);
  const busy = usage.filter((pieces) => pieces > 0).length;
  const days = Math.round(level.months * (365.25 / 12));
  return [
    {
      sentence: `${used} used in ${usage.length} whole months, in ${busy} of them: ${tenths(level.monthly)} a month are to be expected (Croston’s forecast as Syntetos and Boylan correct it).`,
      ...{ value: String(used), from: 'usage', id },
    },
    {
      sentence: `A level of ${level.pieces} lasts the ${days} days to the delivery after the next look in ${percent(level.share)} of cases; aimed at are ${percent(level.aim)}, since a missing piece costs ${costs.missing} and one too many what keeping it costs.`,
      ...{ value: String(level.pieces), from: 'costs', id: null },
    },
    {
      sentence: `${have} are here and ${onOrder} on order: ${gap === 0 ? 'nothing is' : `${gap} are`} missing to the level.`,
      ...{ value: String(have + onOrder), from: onOrder > have ? 'orders' : 'stock', id },
    },
  ];
}

function needWhy({ now, gap, need }: Suggestion, { candidate }: Asked): Why[] {
  if (now === 0 || gap === 0) return [];
  const sentence = `${need}: the larger of ${now} for kits and ${gap} to the level counts, since open kits are part of what usage foresees.`;
  return [{ sentence, value: String(need), from: 'usage', id: candidate.part.id }];
}

function leadWhy({ question, offer, candidate }: Asked): Why {
  const { days, from, count } = question.offer.lead;
  const whose = offer?.name ?? 'no supplier';
  const few = count === 0 ? 'no delivery is on record' : `only ${count} deliveries are on record, 10 are asked for`;
  const learnt = from === 'part' ? `of ${candidate.part.number} from ${whose}` : `from ${whose}`;
  const sentence =
    from === 'agreed'
      ? `${days} days to a delivery, as agreed with ${whose}: ${few}.`
      : `${days} days to a delivery: four in five of ${count} deliveries ${learnt} took no longer.`;
  return { sentence, value: String(days), from: 'record', id: offer?.supplierId ?? null };
}

function fromOffer({ offer }: Asked, words: string): Why {
  const value = /^\d+/.exec(words)?.[0] ?? '';
  return { sentence: `${words}.`, value, from: 'offer', id: offer?.supplierId ?? null };
}
