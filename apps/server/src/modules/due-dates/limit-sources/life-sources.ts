import { lifeVerdict } from '@hubwright/rules/due';
import { type Measure, restsOn, type Total } from '../../units/public.ts';
import { counted, type LimitedPart, type LimitSource, type TotalOf } from './source.ts';

/**
 * Life limits of a unit and its parts. Hours and cycles are dated by the aircraft's meters from what has been flown by now; a number of
 * overhauls has no date, since the next one is not reported but done, and is told.
 */
export function lifeSources(
  parts: readonly LimitedPart[],
  { totalOf, asOf }: { totalOf: TotalOf; asOf: string },
): { limits: LimitSource[]; notes: string[] } {
  const limits = parts.flatMap((part) => [
    ...countedLimit(part, { measure: 'hours', limit: part.hours_tenths, totalOf, asOf }),
    ...countedLimit(part, { measure: 'cycles', limit: part.cycles, totalOf, asOf }),
  ]);
  return { limits, notes: parts.flatMap(overhaulsNote) };
}

function nameOf({ position, part_number, serial }: LimitedPart): string {
  return `${position} ${part_number}${serial === null ? '' : ` serial ${serial}`}`;
}

function countedLimit(
  part: LimitedPart,
  { measure, limit, totalOf, asOf }: { measure: Measure; limit: number | null; totalOf: TotalOf; asOf: string },
): LimitSource[] {
  if (limit === null) return [];
  const total = totalOf(part.item_id, measure);
  const what = `life limit of ${nameOf(part)}, ${part.paper}`;
  const common = { kind: 'life', what, requirement: 'required' } as const;
  const life = `Life of ${nameOf(part)}: ${counted(limit, measure)}`;
  const used = total.atLeastTenths;
  if (total.start === null || total.start.tenths === 'unknown')
    if (used < limit) {
      const least = used > 0 ? `, at least ${counted(used, measure)}` : '';
      return [{ ...common, on: null, left: null, says: `${life}, and its total since new is not known${least}.` }];
    }
  const on = knownOn(total, asOf);
  const least = total.tenths === 'unknown' ? 'at least ' : '';
  const says = `${life}, of which ${least}${counted(used, measure)} were used on ${on} (${restsOn(total, measure)}).`;
  // At its limit a part is used up, by the day that is counted through.
  if (used >= limit) return [{ ...common, on: total.countedThrough, left: null, says }];
  return [{ ...common, on: null, left: { measure, count: limit - used, on }, says }];
}

/** A total that nobody knows, with nothing flown on record since its paper, is one of the day of that paper. */
function knownOn({ tenths, atLeastTenths, start }: Total, asOf: string): string {
  return tenths === 'unknown' && start !== null && atLeastTenths === start.tenths ? start.date : asOf;
}

function overhaulsNote(part: LimitedPart): string[] {
  const { overhauls, since_new_overhauls: counted, overhauled } = part;
  if (overhauls === null) return [];
  const verdict = lifeVerdict(
    { overhauls },
    { hoursTenths: 'unknown', cycles: 'unknown', overhauls: counted ?? 'unknown', overhaulsAtLeast: overhauled },
  );
  const name = `Life of ${nameOf(part)}: ${overhauls} ${overhauls === 1 ? 'overhaul' : 'overhauls'}`;
  if (verdict.state === 'reached') return [`${name}; more than that are on record, it is used up.`];
  if (verdict.state === 'unknown') return [`${name}; how many it had is not known, at least ${overhauled}.`];
  if (verdict.left.overhauls === 0) return [`${name}; it had them all and is retired at the next overhaul.`];
  return [`${name}; it had ${counted}.`];
}
