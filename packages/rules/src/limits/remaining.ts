import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';

type Measured = { overhaul: number; value: number };
type Remaining = { remaining: number | 'unknown'; removalPerOverhaul: number | 'unknown'; basis: string };
type Removal = { each: Decimal; basis: string };

const Exact = Decimal.clone({ precision: 60 });

/**
 * An estimate of how many more overhauls a dimension that shrinks at each one (blade width, thickness) can give before it falls
 * below its service limit. `history`: the value after each overhaul by its number, in any order; values, limit and removal share one unit.
 *
 * Removal per overhaul is the average over the history, first to last; `expectedRemoval` stands in when there is no history to
 * average, and governs when it is the greater, so that the answer errs low. At exactly the limit the part is still in. A dimension
 * below the limit has 0 left; one that did not shrink, or grew, says nothing about the future: `unknown`.
 *
 * Source: common practice, no source. Errors: RuleError `bad-history`, `not-a-number`.
 *
 * Caution: an estimate for planning. Whether this part may fly again is decided by measuring it against the current manual.
 *
 * @example remainingOverhauls({ history: [{ overhaul: 1, value: 10 }, { overhaul: 3, value: 9.8 }], serviceLimit: 9.5 })
 * // { remaining: 3, removalPerOverhaul: 0.1, basis: '0.2 removed in 2 overhauls' }
 */
export function remainingOverhauls(input: {
  history: Measured[];
  serviceLimit: number;
  expectedRemoval?: number;
}): Remaining {
  const history = checked(input);
  const last = history.at(-1);
  if (last === undefined)
    return { remaining: 'unknown', removalPerOverhaul: expected(input), basis: 'not measured yet' };
  const above = new Exact(last.value).minus(input.serviceLimit);
  const removal = governing(history, input.expectedRemoval);
  const known = removal !== undefined && !removal.each.lessThan(0); // a part does not grow: that is a measuring error, not a removal
  const removalPerOverhaul = known ? removal.each.toNumber() : 'unknown';
  if (above.lessThan(0)) return { remaining: 0, removalPerOverhaul, basis: 'already below the service limit' };
  if (removal === undefined)
    return { remaining: 'unknown', removalPerOverhaul, basis: 'one measurement says nothing about removal' };
  if (!removal.each.greaterThan(0))
    return { remaining: 'unknown', removalPerOverhaul, basis: 'the history shows no removal' };
  const remaining = above.dividedToIntegerBy(removal.each).toNumber();
  return { remaining, removalPerOverhaul, basis: removal.basis };
}

function governing(history: Measured[], expectedRemoval: number | undefined): Removal | undefined {
  const measured = average(history);
  if (expectedRemoval === undefined) return measured;
  const assumed = { each: new Exact(expectedRemoval), basis: `expected removal ${expectedRemoval} an overhaul` };
  return measured === undefined || assumed.each.greaterThan(measured.each) ? assumed : measured;
}

function average(history: Measured[]): Removal | undefined {
  const [first, last] = [history[0], history.at(-1)];
  if (first === undefined || last === undefined || first === last) return undefined;
  const removed = new Exact(first.value).minus(last.value);
  const count = last.overhaul - first.overhaul;
  const basis = `${removed.toString()} removed in ${count} ${count === 1 ? 'overhaul' : 'overhauls'}`;
  return { each: removed.div(count), basis };
}

function expected(input: { expectedRemoval?: number }): number | 'unknown' {
  return input.expectedRemoval ?? 'unknown';
}

function checked(input: { history: Measured[]; serviceLimit: number; expectedRemoval?: number }): Measured[] {
  if (!Number.isFinite(input?.serviceLimit))
    throw new RuleError('not-a-number', 'The service limit is a finite number.', 'serviceLimit');
  const { expectedRemoval } = input;
  if (expectedRemoval !== undefined && !(Number.isFinite(expectedRemoval) && expectedRemoval > 0))
    throw new RuleError('not-a-number', 'The expected removal is a number above zero.', 'expectedRemoval');
  if (!Array.isArray(input.history)) throw new RuleError('bad-history', 'The history is a list.', 'history');
  const seen = new Set<number>();
  input.history.forEach(({ overhaul, value }, index) => {
    if (!Number.isSafeInteger(overhaul) || overhaul < 0)
      throw new RuleError('bad-history', 'Overhauls are numbered by whole numbers.', `history[${index}].overhaul`);
    if (seen.has(overhaul))
      throw new RuleError('bad-history', 'Two values for one overhaul.', `history[${index}].overhaul`);
    if (!Number.isFinite(value)) throw new RuleError('not-a-number', 'A value is finite.', `history[${index}].value`);
    seen.add(overhaul);
  });
  return input.history.toSorted((a, b) => a.overhaul - b.overhaul);
}
