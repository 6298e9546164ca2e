import type { Scope } from '@hubwright/contracts/manuals/words';
import { eventTitles } from '@hubwright/contracts/manuals/words';
import type { Input } from '@hubwright/contracts/operation';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import type { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { daysBetween } from '@hubwright/rules/dates';
import { normaliseSerial } from '@hubwright/rules/identity';

type Arrival = Input<typeof workOrderOperations.receiveUnit>;
type Asked = Pick<Arrival, 'scope' | 'events'>;
type Hours = { readonly sinceNewTenths: number | 'unknown'; readonly sinceOverhaulTenths: number | 'unknown' };

/** More than any propeller or governor has run; common practice, no source. */
const plausibleTenths = 600_000;

const notForGovernors: readonly Scope[] = ['fixed-pitch', 'balance-only', 'strike-inspection'];

/** A declared event has an inspection of its own; a reseal or a balance does not answer it. And each scope has its kind of unit. */
export function refuseScope(input: Asked, model: { kind: string; pitch: string; designation: string }): void {
  const { scope, events } = input;
  if (events.length > 0 && (scope === 'reseal' || scope === 'balance-only')) {
    const names = events.map((event) => eventTitles[event].toLowerCase()).join(', ');
    throw refused(`After ${names} the manual asks for an inspection: a ${scope} does not answer it`);
  }
  const governor = model.kind === 'governor';
  if (governor ? notForGovernors.includes(scope) : scope === 'governor')
    throw refused(`${model.designation} is a ${model.kind}: the scope ${scope} is not for it`);
  if (scope === 'fixed-pitch' && model.pitch !== 'fixed')
    throw refused(`${model.designation} is not a fixed-pitch propeller`);
}

function refused(detail: string): Problem {
  return new Problem('scope-refused', detail, {}, [{ pointer: '/scope', detail }]);
}

/** Hub and blades counted against the model; a one-piece propeller and a governor have none of them. */
export function refuseParts(
  input: Arrival,
  model: { kind: string; pitch: string; bladeCount: number | null; maker: string },
): void {
  const blades = input.parts.filter((part) => part.kind === 'blade').length;
  const hubs = input.parts.filter((part) => part.kind === 'hub').length;
  const onePiece = model.kind === 'governor' || model.pitch === 'fixed';
  const fits = onePiece ? blades === 0 && hubs === 0 : blades === model.bladeCount && hubs === 1;
  if (!fits) {
    const wanted = onePiece ? 'neither hub nor blades' : `one hub and ${model.bladeCount} blades`;
    const detail = `This model has ${wanted}; ${hubs} hub${hubs === 1 ? '' : 's'} and ${blades} blade${blades === 1 ? '' : 's'} were entered`;
    throw new Problem('parts-wrong', detail, {}, [{ pointer: '/parts', detail }]);
  }
  const seen = new Set<string>();
  for (const [index, part] of input.parts.entries()) {
    const identity =
      part.serial === null ? null : `${part.maker ?? model.maker}|${part.partNumber}|${normaliseSerial(part.serial)}`;
    for (const mark of [`at ${part.position}`, ...(identity ? [identity] : [])]) {
      if (seen.has(mark))
        throw new Problem('parts-wrong', 'Two parts cannot share a position or a serial', {}, [
          { pointer: `/parts/${index}`, detail: 'This position or serial was entered before' },
        ]);
      seen.add(mark);
    }
  }
}

/** What the shop knew of the unit on an earlier day: totals, or what is known of them at least. */
export interface EarlierTimes {
  readonly on: string;
  readonly tenths: number | 'unknown';
  readonly atLeastTenths: number;
  readonly atLeastCycles: number;
}

/** Hours that cannot be: beyond plausible, more since overhaul than since new, backwards, or faster than the clock. */
export function refuseHours(input: Arrival, earlier: EarlierTimes | null, on: string): void {
  const wrong = [...impossible(input.times, '/times'), ...meterFaults(input.times)];
  for (const [index, part] of input.parts.entries()) wrong.push(...impossible(part, `/parts/${index}`));
  const now = input.times.sinceNewTenths;
  if (earlier && now !== 'unknown') wrong.push(...hourFaults(now, earlier, on));
  const cycles = input.times.sinceNewCycles;
  if (earlier && cycles !== 'unknown' && cycles < earlier.atLeastCycles)
    wrong.push({
      pointer: '/times/sinceNewCycles',
      detail: `It had ${earlier.atLeastCycles} cycles on ${earlier.on} already`,
    });
  const [first] = wrong;
  if (first) throw new Problem('hours-wrong', first.detail, {}, wrong);
}

function hourFaults(now: number, { on: then, tenths, atLeastTenths }: EarlierTimes, on: string): Pointed[] {
  const pointer = '/times/sinceNewTenths';
  if (now < atLeastTenths) return [{ pointer, detail: `It had ${atLeastTenths / 10} h on ${then} already` }];
  const days = Math.max(0, daysBetween(then, on));
  if (tenths === 'unknown' || now - tenths <= (days + 1) * 240) return [];
  return [{ pointer, detail: 'More than 24 hours a day since its last visit' }];
}

function impossible(hours: Hours, base: string): Pointed[] {
  const wrong: Pointed[] = [];
  for (const name of ['sinceNewTenths', 'sinceOverhaulTenths'] as const) {
    const value = hours[name];
    if (value !== 'unknown' && value > plausibleTenths)
      wrong.push({ pointer: `${base}/${name}`, detail: `More than ${plausibleTenths / 10} hours is not plausible` });
  }
  const { sinceNewTenths, sinceOverhaulTenths } = hours;
  if (sinceNewTenths !== 'unknown' && sinceOverhaulTenths !== 'unknown' && sinceOverhaulTenths > sinceNewTenths)
    wrong.push({
      pointer: `${base}/sinceOverhaulTenths`,
      detail: 'Hours since overhaul cannot be more than since new',
    });
  return wrong;
}

// Which meter the hours come from is part of the reading.
function meterFaults(times: Arrival['times']): Pointed[] {
  const known = times.sinceNewTenths !== 'unknown' || times.sinceOverhaulTenths !== 'unknown';
  if (known && times.meter === undefined)
    return [{ pointer: '/times/meter', detail: 'Say which meter the hours come from' }];
  if (times.meterTenths !== undefined && times.meter === undefined)
    return [{ pointer: '/times/meter', detail: 'Say which meter this is' }];
  return [];
}

/** What a declared event makes the desk ask before the unit is looked at. */
export function prompts({ events }: Pick<Asked, 'events'>): string[] {
  return events.length === 0 ? [] : [...askAbout(events), 'The preliminary inspection includes hidden damage.'];
}

/** Whatever happened to a propeller happened to what it is bolted to. */
export function askAbout(events: readonly string[]): string[] {
  if (events.length === 0) return [];
  return [
    'Ask whether engine and governor of the same installation are inspected for this event; the current approved manuals say how.',
  ];
}
