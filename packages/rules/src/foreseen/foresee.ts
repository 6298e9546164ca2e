import { arrivalShares, monthEnds } from './arrival-shares.ts';
import type { ForeseeInput } from './foresee-input.ts';
import { type Foresight, type Group, Plan } from './plan.ts';
import { type Asks, asksOf } from './unit-asks.ts';

/**
 * What units that are not in work yet are expected to need, by part and month: the mandatory lines of the kit list of every unit that comes
 * due, times how likely it comes to us in that month; and what is found to be needed beyond the list, in these and in units in the house
 * that nobody has looked into. As-needed lines count at the most that may be used, as in kits. Lines of a serial range are left out
 * where the serial is not read. Expected, never firm.
 *
 * Source: expectation of a sum is the sum of expectations; dependent demand as in material requirements planning.
 * Errors: RuleError not-a-share, and those of `arrivalShares` and `explodeKitList`.
 */
export function foresee(input: ForeseeInput): Foresight {
  const plan = new Plan(input);
  for (const group of groupsOf(input)) plan.addDue(group);
  for (const unit of input.unseen) plan.addUnseen(unit);
  return { rows: plan.rows(), units: plan.units() };
}

/** Units that ask for the same, added up: thousands of units are of a few models. */
function groupsOf(input: ForeseeInput): Group[] {
  const asks = asksOf(input);
  const ends = monthEnds(input);
  const groups = new Map<Asks, Map<string, Group>>();
  for (const unit of input.due) {
    const shares = arrivalShares(unit, input, ends);
    if (shares.every((share) => share === 0)) continue;
    const what = asks(unit);
    const bySources = groups.get(what) ?? new Map<string, Group>();
    groups.set(what, bySources);
    const group = bySources.get(unit.sources) ?? {
      asks: what,
      sources: unit.sources,
      shares: ends.map(() => 0),
      units: 0,
    };
    shares.forEach((share, month) => {
      group.shares[month] = (group.shares[month] ?? 0) + share * input.returnRate;
    });
    group.units += 1;
    bySources.set(unit.sources, group);
  }
  return [...groups.values()].flatMap((bySources) => [...bySources.values()]);
}
