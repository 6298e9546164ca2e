import { lifeVerdict } from '@hubwright/rules/due';
import { inHours, type LimitedPart, type LimitSource } from './source.ts';

/**
 * Life limits of a unit and its parts. Hours are dated by the aircraft's meter from the day the total was recorded; cycles and overhauls
 * have no date, since nobody reports them between visits, and are told.
 */
export function lifeSources(parts: readonly LimitedPart[]): { limits: LimitSource[]; notes: string[] } {
  const limits = parts.flatMap(inHoursOf);
  return { limits, notes: parts.flatMap((part) => [...cyclesNote(part), ...overhaulsNote(part)]) };
}

function nameOf({ position, part_number, serial }: LimitedPart): string {
  return `${position} ${part_number}${serial === null ? '' : ` serial ${serial}`}`;
}

function inHoursOf(part: LimitedPart): LimitSource[] {
  const { hours_tenths: limit, since_new_tenths: used, recorded_on: on, paper } = part;
  if (limit === null) return [];
  const what = `life limit of ${nameOf(part)}, ${paper}`;
  const common = { kind: 'life', what, requirement: 'required' } as const;
  if (used === null || on === null) {
    const says = `Life of ${nameOf(part)}: ${inHours(limit)}, and its total since new is not known.`;
    return [{ ...common, on: null, hours: null, says }];
  }
  const says = `Life of ${nameOf(part)}: ${inHours(limit)}, of which ${inHours(used)} were used on ${on}.`;
  // At its limit a part is used up, on the day that was recorded.
  if (used >= limit) return [{ ...common, on, hours: null, says }];
  return [{ ...common, on: null, hours: { leftTenths: limit - used, on }, says }];
}

function cyclesNote(part: LimitedPart): string[] {
  const { cycles, since_new_cycles: used } = part;
  if (cycles === null) return [];
  const stands = used === null ? 'its cycles are not known' : `${used} on ${part.recorded_on}`;
  const reached = used !== null && used >= cycles ? '; it is used up' : '';
  return [`Life of ${nameOf(part)}: ${cycles} cycles; ${stands}${reached}. Nobody reports cycles, so it has no date.`];
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
