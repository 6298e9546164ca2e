import { RuleError } from '../errors/index.ts';

export type LotRule =
  | { kind: 'lot-for-lot' }
  | { kind: 'fixed'; quantity: number }
  | { kind: 'multiple'; of: number; minimum?: number | undefined };

export type NetRequirementsInput = {
  gross: number[];
  onHand: number;
  scheduledReceipts: number[];
  safetyStock?: number | undefined;
  leadTimePeriods: number;
  lotRule: LotRule;
};

export type NetRequirements = {
  net: number[];
  plannedReceipts: number[];
  plannedReleases: number[];
  /** On hand at the end of each period, planned receipts included. */
  projected: number[];
  /** Should have been released before the first period: expedite, it does not vanish. */
  pastDueRelease: number;
};

/**
 * Gross-to-net for one part, period by period: what is needed beyond stock and scheduled receipts to stay at the safety
 * stock, rounded up by the lot rule ('fixed': whole lots of that quantity), released a lead time earlier.
 * Whole numbers of the smallest issue unit; periods are the array places.
 * Source: time-phased netting of material requirements planning (Heizer & Render, Operations Management, MRP chapter).
 *
 * @throws RuleError not-a-quantity, not-a-lead-time, lengths-differ, not-a-lot-rule
 * @example gross 30 0 0 10, on hand 20, lead time 2: net 10 in the first period (10 past due) and 10 in the fourth
 *   (released in the second).
 */
export function netRequirements(input: NetRequirementsInput): NetRequirements {
  checkInput(input);
  const { gross, scheduledReceipts, leadTimePeriods, safetyStock = 0 } = input;
  const result: NetRequirements = {
    net: [],
    plannedReceipts: [],
    plannedReleases: gross.map(() => 0),
    projected: [],
    pastDueRelease: 0,
  };
  let available = input.onHand;
  gross.forEach((needed, period) => {
    available += scheduledReceipts[period]! - needed;
    const net = Math.max(0, safetyStock - available);
    const receipt = net === 0 ? 0 : lotFor(net, input.lotRule);
    available += receipt;
    result.net.push(net);
    result.plannedReceipts.push(receipt);
    result.projected.push(available);
    const release = period - leadTimePeriods;
    if (release >= 0) result.plannedReleases[release] = receipt;
    else result.pastDueRelease += receipt;
  });
  return result;
}

function lotFor(net: number, rule: LotRule): number {
  if (rule.kind === 'lot-for-lot') return net;
  if (rule.kind === 'fixed') return Math.ceil(net / rule.quantity) * rule.quantity;
  return Math.ceil(Math.max(net, rule.minimum ?? 0) / rule.of) * rule.of;
}

function checkInput(input: NetRequirementsInput): void {
  whole(input.onHand, 'onHand');
  if (input.safetyStock !== undefined) whole(input.safetyStock, 'safetyStock');
  input.gross.forEach((quantity, i) => {
    whole(quantity, `gross[${i}]`);
  });
  input.scheduledReceipts.forEach((quantity, i) => {
    whole(quantity, `scheduledReceipts[${i}]`);
  });
  if (input.scheduledReceipts.length !== input.gross.length) {
    throw new RuleError('lengths-differ', 'There must be one scheduled receipt per period.', 'scheduledReceipts');
  }
  if (!Number.isSafeInteger(input.leadTimePeriods) || input.leadTimePeriods < 0) {
    throw new RuleError('not-a-lead-time', 'A lead time is a whole number of periods, 0 or more.', 'leadTimePeriods');
  }
  checkRule(input.lotRule);
}

function checkRule(rule: LotRule): void {
  const positive = (value: number) => Number.isSafeInteger(value) && value > 0;
  if (rule.kind === 'lot-for-lot') return;
  if (rule.kind === 'fixed' && positive(rule.quantity)) return;
  const minimum = rule.kind === 'multiple' ? (rule.minimum ?? 0) : -1;
  if (rule.kind === 'multiple' && positive(rule.of) && Number.isSafeInteger(minimum) && minimum >= 0) return;
  throw new RuleError('not-a-lot-rule', 'A lot is lot-for-lot, or a whole number of at least 1.', 'lotRule');
}

function whole(value: number, path: string): void {
  if (Number.isSafeInteger(value) && value >= 0) return;
  throw new RuleError('not-a-quantity', 'A quantity is a whole number of the smallest issue unit, 0 or more.', path);
}
