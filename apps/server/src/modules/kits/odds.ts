import type { openAnswers } from '@hubwright/contracts/kits/allocation-operations';
import { daysBetween } from '@hubwright/rules/dates';
import { findingRate } from '@hubwright/rules/history';
import type { Policy } from './allocation-policy.ts';
import type { Ask } from './ask.ts';

type OpenAnswer = (typeof openAnswers)[number];

/** How likely work is whose answer is that far, and what it is told from. */
export interface Odds {
  readonly percent: number;
  /** What the shop said; the record is held against it. */
  readonly said: number;
  readonly yes: number;
  readonly asked: number;
}
export type AllOdds = Readonly<Record<OpenAnswer, Odds>>;

/** What was said is worth so many answers of one's own; common practice, no source. */
const worthOfSaid = 10;
const yearsBack = 5;

type Counts = { readonly [K in `${Exclude<OpenAnswer, 'noPriceYet' | 'silent'>}${'Yes' | 'Asked'}`]: number };

/**
 * $1 today, $2 the shop's zone, $3 days after which an answer is old. Answers up to yesterday, so that odds hold for a day. An order came
 * to nothing when its estimate or its quote was declined, and to work when its quote was approved; what is open says nothing yet.
 */
const countsSql = `
  WITH answered AS (
    SELECT q.work_order_id, q.kind, q.state = 'approved' AS yes, q.decided_at - q.sent_at >= make_interval(days => $3::int) AS old
    FROM quotes q WHERE q.state IN ('approved', 'declined') AND q.decided_at < ($1::date)::timestamp AT TIME ZONE $2
      AND q.decided_at >= ($1::date - make_interval(years => ${yearsBack}))),
  outcomes AS (
    SELECT work_order_id, bool_or(kind = 'firm' AND yes) AS yes, bool_or(kind = 'firm') AS quoted, bool_or(kind = 'estimate') AS estimated,
      bool_or(kind = 'estimate' AND old) AS estimate_old, bool_or(kind = 'firm' AND old) AS quote_old
    FROM answered WHERE kind IN ('estimate', 'firm') GROUP BY 1 HAVING bool_or(kind = 'firm' OR NOT yes))
  SELECT count(*) FILTER (WHERE estimated AND yes)::int AS "estimateOutYes", count(*) FILTER (WHERE estimated)::int AS "estimateOutAsked",
    count(*) FILTER (WHERE estimate_old AND yes)::int AS "estimateOldYes", count(*) FILTER (WHERE estimate_old)::int AS "estimateOldAsked",
    count(*) FILTER (WHERE quoted AND yes)::int AS "quoteOutYes", count(*) FILTER (WHERE quoted)::int AS "quoteOutAsked",
    count(*) FILTER (WHERE quote_old AND yes)::int AS "quoteOldYes", count(*) FILTER (WHERE quote_old)::int AS "quoteOldAsked",
    (SELECT count(*) FILTER (WHERE yes) FROM answered WHERE kind = 'over-and-above')::int AS "extraOutYes",
    (SELECT count(*) FROM answered WHERE kind = 'over-and-above')::int AS "extraOutAsked"
  FROM outcomes`;

/** How likely open answers are a yes: what the shop said, corrected by how its customers have answered. */
export async function currentOdds(ask: Ask, of: { today: string; zone: string; policy: Policy }): Promise<AllOdds> {
  const { likelihood } = of.policy;
  const [counts] = await ask<Counts>(countsSql, [of.today, of.zone, likelihood.oldAfterDays]);
  const count = (name: keyof Counts) => counts?.[name] ?? 0;
  return {
    // An order without a price has the whole way to go, like one whose estimate is out.
    noPriceYet: oddsOf(likelihood.noPriceYet, count('estimateOutYes'), count('estimateOutAsked')),
    estimateOut: oddsOf(likelihood.estimateOut, count('estimateOutYes'), count('estimateOutAsked')),
    estimateOld: oddsOf(likelihood.estimateOld, count('estimateOldYes'), count('estimateOldAsked')),
    quoteOut: oddsOf(likelihood.quoteOut, count('quoteOutYes'), count('quoteOutAsked')),
    quoteOld: oddsOf(likelihood.quoteOld, count('quoteOldYes'), count('quoteOldAsked')),
    extraOut: oddsOf(likelihood.quoteOut, count('extraOutYes'), count('extraOutAsked')),
    // Whoever answered after all is among the old ones; who never did is in no record.
    silent: oddsOf(likelihood.silent, 0, 0),
  };
}

function oddsOf(said: number, yes: number, asked: number): Odds {
  // 0 and 100 percent are decisions, not expectations: no record changes them.
  if (said === 0 || said === 100) return { percent: said, said, yes, asked };
  const { mean } = findingRate(yes, asked, { mean: said / 100, weight: worthOfSaid });
  return { percent: Math.round(mean * 100), said, yes, asked };
}

/** What is known of the customer's answer to a work order, and to what a finding asks for beyond it. */
export interface Answer {
  readonly consent: string;
  /** The day it came to that. */
  readonly consentSince: string;
  /** Of a line that a finding asks for beyond what was approved: how far the newest price for it is; null for all others. */
  readonly extra: 'unpriced' | 'draft' | 'sent' | 'silent' | 'approved' | 'declined' | null;
}

export interface OddsBasis {
  readonly today: string;
  readonly policy: Policy;
  readonly odds: AllOdds;
}

/** How likely the work is, in percent; null where the customer has approved it and it is firm. */
export function likelyPercent(answer: Answer, { today, policy, odds }: OddsBasis): number | null {
  const isOld = daysBetween(answer.consentSince, today) >= policy.likelihood.oldAfterDays;
  switch (answer.consent) {
    case 'approved':
      return extraPercent(answer, odds);
    case 'estimate-sent':
      return (isOld ? odds.estimateOld : odds.estimateOut).percent;
    case 'quote-sent':
      return (isOld ? odds.quoteOld : odds.quoteOut).percent;
    case 'estimate-silent':
    case 'quote-silent':
      return odds.silent.percent;
    default:
      return odds.noPriceYet.percent;
  }
}

/** A finding after the yes is another offer: its parts are firm only once it is approved, and none are wanted once it was declined. */
function extraPercent({ extra }: Answer, odds: AllOdds): number | null {
  if (extra === null || extra === 'approved') return null;
  if (extra === 'declined') return 0;
  return (extra === 'silent' ? odds.silent : odds.extraOut).percent;
}
