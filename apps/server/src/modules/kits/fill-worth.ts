import { addDays, daysBetween } from '@hubwright/rules/dates';
import { minorDigits } from '@hubwright/rules/money';
import type { FillFacts } from './fill.sql.ts';
import type { KitRow } from './kits.sql.ts';
import type { LineCover } from './line-cover.ts';

/** What filling a kit now is worth, and why, in words. */
export interface Worth {
  readonly value: number;
  readonly daysAvoided: number;
  readonly amount: { currency: string; minor: number } | null;
  readonly why: string;
}

/**
 * Promised value × days late avoided, weighed by how likely the work is. Days avoided: if what lies on the shelf went elsewhere, new
 * pieces would be here after the longest lead time among them; how many days later than now the kit would be whole, counted from the
 * day it is needed. The weighing is our own reading of “most value finished”; common practice, no source.
 */
export function worthOf(facts: FillFacts, today: string): (kit: KitRow, lines: readonly LineCover[]) => Worth {
  const factor = 10 ** minorDigits(facts.currency);
  const known = [...facts.amounts.values()].sort((a, b) => a - b);
  const middle = known[Math.floor((known.length - 1) / 2)] ?? factor;
  return (kit, lines) => {
    const own = facts.amounts.get(kit.workOrder.id);
    const whole = Math.round((own ?? middle) / factor);
    const lead = Math.max(0, ...lines.map(({ row }) => row.leadTimeDays));
    const again = addDays(today, lead);
    const late = (day: string) => Math.max(0, daysBetween(kit.needBy, day));
    const daysAvoided = late(again) - late(today);
    const likely = lines[0]?.likely ?? null;
    const words = { kit, again, daysAvoided, likely, price: `${facts.currency} ${whole.toLocaleString('en-US')}` };
    return {
      value: (whole * daysAvoided * (likely ?? 100)) / 100,
      daysAvoided,
      amount: own === undefined ? null : { currency: facts.currency, minor: own },
      why: why({ ...words, isPriced: own !== undefined, hasOthers: known.length > 0 }),
    };
  };
}

function why(of: {
  kit: KitRow;
  again: string;
  daysAvoided: number;
  likely: number | null;
  price: string;
  isPriced: boolean;
  hasOthers: boolean;
}): string {
  const { kit, again, daysAvoided, likely, price } = of;
  if (daysAvoided === 0)
    return `Needed ${kit.needBy}; new pieces would be here by ${again}, in time, so filling it now avoids no delay.`;
  const days = `${daysAvoided} ${daysAvoided === 1 ? 'day' : 'days'}`;
  const what = of.isPriced || of.hasOthers ? `${price} × ${days}` : days;
  const sentences = [
    `${what}: without the pieces on the shelf new ones would be here on ${again}; it is needed ${kit.needBy}.`,
  ];
  if (!of.isPriced)
    sentences.push(
      of.hasOthers
        ? 'No price is with the customer yet: it counts like the middle one of the others.'
        : 'No price is with any customer yet: every kit counts alike.',
    );
  if (likely !== null) sentences.push(`Counted at ${likely} %: the customer has not approved the work yet.`);
  return sentences.join(' ');
}
