import { addDays, isDate } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

export * from './counting.ts';
export * from './one-lot.ts';
export * from './stand-ins.ts';

/** What is known of a lot when someone wants to use it. */
export type LotFacts = {
  id: string;
  part: string;
  state: 'quarantine' | 'accepted' | 'rejected' | 'suspected';
  hasCertificate: boolean;
  certificateRequired: boolean;
  /** First day on which it may not be used; absent: it does not age. */
  expires?: string | undefined;
  /** Days of shelf life that must be left on the day of the build. */
  minimumDaysAtBuild: number;
  source: string;
  /** Whose it is; absent: the shop's. */
  owner?: string | undefined;
  /** On the shelf and promised to nobody else. */
  free: number;
};

/** What a position asks for. */
export type Need = {
  /** The part itself first, then its alternates in order of preference. */
  parts: string[];
  quantity: number;
  today: string;
  /** Day of the build; before today means today. */
  buildOn: string;
  acceptedSources: string[];
  /** Whose unit it goes into. */
  owner: string;
};

/** Why a lot may not be used for a need; the first that applies, in this order. */
export type Misfit =
  | 'wrong-part'
  | 'not-accepted'
  | 'no-certificate'
  | 'expired'
  | 'short-life'
  | 'source-not-accepted'
  | 'other-owner';

/**
 * Whether a lot may be used for a need, whatever its quantity. Undefined: it may.
 *
 * A lot is usable on every day before `expires`. On the day of the build at least `minimumDaysAtBuild` such days must be left,
 * that day counted: what expires on 2026-03-11 has ten days left on 2026-03-01. Source: common practice, no source.
 *
 * @throws RuleError `not-a-date`
 */
export function misfit(lot: LotFacts, need: Omit<Need, 'quantity'>): Misfit | undefined {
  const { today, buildOn } = need;
  for (const [path, day] of Object.entries({ today, buildOn, ...(lot.expires ? { expires: lot.expires } : {}) })) {
    if (!isDate(day)) throw new RuleError('not-a-date', 'A date must be a real day written YYYY-MM-DD.', path);
  }
  if (!need.parts.includes(lot.part)) return 'wrong-part';
  if (lot.state !== 'accepted') return 'not-accepted';
  if (lot.certificateRequired && !lot.hasCertificate) return 'no-certificate';
  if (lot.expires !== undefined && lot.expires <= today) return 'expired';
  const [, buildDay] = [buildOn, today].sort() as [string, string];
  if (lot.expires !== undefined && lot.expires < addDays(buildDay, Math.max(1, lot.minimumDaysAtBuild)))
    return 'short-life';
  if (!need.acceptedSources.includes(lot.source)) return 'source-not-accepted';
  if (lot.owner !== undefined && lot.owner !== need.owner) return 'other-owner';
  return undefined;
}

export type Choice = {
  picks: { lot: string; quantity: number }[];
  /** What no fitting lot can give. */
  left: number;
  /** Lots passed over, with the reason. */
  passedOver: { lot: string; reason: Misfit | 'nothing-free' }[];
};

/**
 * Which lots to promise to a need: its own part before alternates in their order, then earliest expiry first (what does not
 * age last), then the older id. Quantities: whole issue units. Source: first expired, first out; common practice, no source.
 *
 * @throws RuleError `not-a-quantity`, `not-a-date`
 * @example choose({ parts: ['SEAL'], quantity: 3, … }, [{ id: 'late', free: 5, … }, { id: 'soon', free: 2, … }])
 *   // picks 2 of soon, 1 of late
 */
export function choose(need: Need, lots: LotFacts[]): Choice {
  refuseBadQuantity(need.quantity, 'need.quantity');
  lots.forEach((lot, index) => {
    refuseBadQuantity(lot.free, `lots[${index}].free`);
  });
  const choice: Choice = { picks: [], left: need.quantity, passedOver: [] };
  for (const lot of [...lots].sort(byPreference(need.parts))) {
    const reason = misfit(lot, need) ?? (lot.free === 0 ? 'nothing-free' : undefined);
    if (reason) choice.passedOver.push({ lot: lot.id, reason });
    else if (choice.left > 0) {
      const quantity = Math.min(lot.free, choice.left);
      choice.picks.push({ lot: lot.id, quantity });
      choice.left -= quantity;
    }
  }
  return choice;
}

function byPreference(parts: string[]): (a: LotFacts, b: LotFacts) => number {
  const rank = (lot: LotFacts) => {
    const at = parts.indexOf(lot.part);
    return at === -1 ? parts.length : at;
  };
  const expiry = (lot: LotFacts) => lot.expires ?? '9999-12-31';
  return (a, b) => rank(a) - rank(b) || order(expiry(a), expiry(b)) || order(a.id, b.id);
}

function order(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

function refuseBadQuantity(quantity: number, path: string): void {
  if (Number.isSafeInteger(quantity) && quantity >= 0) return;
  throw new RuleError('not-a-quantity', 'A quantity is whole issue units, 0 or more.', path);
}

/**
 * The largest difference of a count that is written without a second person: two in a hundred of what the book says, at least
 * one piece; none at all for serialized pieces and for what belongs to a customer. Source: common practice, no source.
 */
export function countTolerance(onBook: number, { exact = false }: { exact?: boolean } = {}): number {
  refuseBadQuantity(onBook, 'onBook');
  return exact ? 0 : Math.max(1, Math.floor((onBook * 2) / 100));
}
