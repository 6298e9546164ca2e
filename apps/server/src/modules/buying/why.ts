import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { Reply } from '@hubwright/contracts/operation';
import type { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import type { Suggestion } from '@hubwright/rules/replenishment';
import { expectedSentence } from '../kits/public.ts';
import type { Asked } from './questions.ts';

export type Why = Reply<typeof buyingOperations.listSuggestions>['rows'][number]['because'][number];

/** Kit lines named one by one; the rest is one sentence. */
const named = 6;

/** Why so many and not another number: each step a sentence whose number leads to where it comes from. */
export function whyOf(asked: Asked, found: Suggestion): Why[] {
  return [
    ...insteadWhy(asked),
    ...shortWhy(asked),
    ...expectedWhy(asked),
    ...plannedWhy(asked, found),
    ...splitWhy(asked, found),
    ...levelWhy(asked, found),
    ...findingsWhy(asked, found),
    ...needWhy(found, asked),
    leadWhy(asked),
    ...found.buy.because.slice(1).map((words) => fromOffer(asked, words)),
  ];
}

const tenths = (value: number) => String(Math.round(value * 10) / 10);
const percent = (share: number) => `${(share * 100).toFixed(1)} %`;

/** The old part is named, because it is what the kit asks for. */
function insteadWhy({ candidate, demand }: Asked): Why[] {
  const { part, covers } = candidate;
  const asked = new Set([
    ...demand.short.map(({ row }) => row.part.id),
    ...demand.foreseen.map((foreseen) => foreseen.part.id),
  ]);
  return covers
    .filter(({ id }) => id !== part.id && asked.has(id))
    .map(({ id, number }) => ({
      sentence: `${part.number} is ordered instead of ${number}, whose place it has taken.`,
      ...{ value: number, from: 'stock' as const, id },
    }));
}

function shortWhy({ demand: { short }, candidate }: Asked): Why[] {
  const lines = short.slice(0, named).map(({ row, short: missing, likely }) => ({
    sentence: `${partWords(missing, row.part)} short for ${row.kitCode} (${row.position || `line ${row.sequence}`}), needed ${row.needBy}${likely === null ? '' : `; ${likely} % likely, not approved yet`}.`,
    ...{ value: String(missing), from: 'kit' as const, id: row.kitId },
  }));
  const rest = short.slice(named);
  if (rest.length === 0) return lines;
  const pieces = rest.reduce((sum, line) => sum + line.short, 0);
  const sentence = `${pieces} more for ${rest.length} more kit lines.`;
  return [...lines, { sentence, value: String(pieces), from: 'usage', id: candidate.part.id }];
}

/** For units that are not in work yet; the number leads to the units behind it. */
function expectedWhy({ demand }: Asked): Why[] {
  return demand.foreseen.flatMap((cover) =>
    (['due', 'finding'] as const).flatMap((kind) =>
      expectedSentence(cover, kind).map((sentence) => ({
        ...{ sentence, value: /^[\d.]+/.exec(sentence)?.[0] ?? '', from: 'expected' as const, id: cover.part.id },
      })),
    ),
  );
}

/** “24 for kits in house, 9 expected from units due, 7 by findings: 40.” */
function splitWhy({ candidate, demand }: Asked, { by, now, findingsGap }: Suggestion): Why[] {
  const finding = by.finding + findingsGap;
  const total = now + findingsGap;
  if (total === 0 || by.kit === total) return [];
  const odds = demand.short.length > 0 ? ' by their odds' : '';
  const parts = [
    [by.kit, 'for kits in house'],
    [by.likely, `for kits not approved yet,${odds}`],
    [by.due, 'expected from units due'],
    [finding, 'by findings'],
  ] as const;
  const words = parts.filter(([pieces]) => pieces > 0).map(([pieces, what]) => `${pieces} ${what}`);
  return [
    { sentence: `${words.join(', ')}: ${total}.`, value: String(total), from: 'expected', id: candidate.part.id },
  ];
}

/** The level of what is found now and then, beside what is expected of named units. */
function findingsWhy({ question, candidate }: Asked, { findings, findingsGap, by }: Suggestion): Why[] {
  if (!findings || findingsGap === 0) return [];
  const used = (question.found ?? []).reduce((sum, pieces) => sum + pieces, 0);
  const sentence = `${used} of the usage were findings: a level of ${findings.pieces} suffices in ${percent(findings.share)} of cases, ${question.free ?? 0} are free for it, and ${by.finding + findingsGap} are bought for findings where ${by.finding} are expected of named units.`;
  return [{ sentence, value: String(findingsGap), from: 'usage', id: candidate.part.id }];
}

function plannedWhy({ question }: Asked, { short, now, later }: Suggestion): Why[] {
  if (now === 0 || later.length === 0) return [];
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

function needWhy({ now, findingsGap, gap, need, by }: Suggestion, { candidate }: Asked): Why[] {
  const dated = now + findingsGap;
  if (dated === 0 || gap === 0) return [];
  const what = by.kit + by.likely === dated ? 'for kits' : 'for kits and what is expected';
  const sentence = `${need}: the larger of ${dated} ${what} and ${gap} to the level counts, since open kits are part of what usage foresees.`;
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
