import { arrivalShares, monthEnds } from './arrival-shares.ts';
import type { ForeseeInput, ForeseenKind } from './foresee-input.ts';
import { monthOf } from './plan.ts';
import { type Asks, asksOf, type Need } from './unit-asks.ts';

/** How much of a part one unit is expected to ask for, and how likely it asks at all. */
export interface Share {
  readonly kind: ForeseenKind;
  /** A unit that comes due, or a work order in the house. */
  readonly unit?: string;
  readonly workOrder?: string;
  readonly probability: number;
  readonly each: number;
  readonly quantity: number;
}

/** The units behind what is expected of one part, in the order they are given; their quantities add up to its rows. */
export function sharesOf(input: ForeseeInput, part: string): Share[] {
  const asks = asksOf(input);
  const ends = monthEnds(input);
  const due = input.due.flatMap((unit) => {
    const probability = input.returnRate * sum(arrivalShares(unit, input, ends));
    return probability > 0
      ? sharesIn(asks(unit), part, probability).map((share) => ({ ...share, unit: unit.unit }))
      : [];
  });
  const unseen = input.unseen.flatMap(({ workOrder, model, odds, needBy, asked }) => {
    if (monthOf(needBy, input) >= input.months || asked.includes(part)) return [];
    const found = asks({ model, serial: null }).found.get(part);
    return found ? [{ kind: 'finding' as const, workOrder, ...times(found, odds) }] : [];
  });
  return [...due, ...unseen];
}

const times = ({ rate, each }: Need, odds: number) => ({
  probability: rate * odds,
  each,
  quantity: rate * odds * each,
});
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

function sharesIn({ listed, found }: Asks, part: string, odds: number): Omit<Share, 'unit' | 'workOrder'>[] {
  const each = listed.get(part);
  const need = found.get(part);
  return [
    ...(each ? [{ kind: 'due' as const, ...times({ rate: 1, each }, odds) }] : []),
    ...(need ? [{ kind: 'finding' as const, ...times(need, odds) }] : []),
  ];
}
