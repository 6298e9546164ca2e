import { RuleError } from '../errors/index.ts';
import { askedFirst, otherUnit, readDecimal, refuseImpossible } from '../reading/index.ts';
import {
  decimalsOf,
  type Pass,
  passesOf,
  placesOf,
  type TorqueGroup,
  type TorqueSpec,
  type TorqueUnit,
  torqueUnits,
} from './plan.ts';
import { type Adapter, leverShare, settingBand } from './wrench.ts';

/** One pass as it was done: what the wrench was set to, as read on it, and the places in the order they were tightened. */
export interface PassDone {
  readonly group: string;
  readonly pass: string;
  readonly setting: string;
  readonly adapter?: Adapter | undefined;
  readonly places: readonly string[];
}

/** A torque sheet as filled in. */
export interface TorqueDone {
  readonly passes: readonly PassDone[];
  /** How often it was cycled on air before it was torqued again. */
  readonly cycled?: number | undefined;
  /** Groups whose threads were looked at and are as asked. */
  readonly threads: readonly string[];
  /** Places that are safetied. */
  readonly safetied: readonly string[];
}

export interface TorqueVerdict {
  readonly good: boolean;
  readonly reasons: string[];
}

/**
 * Whether everything was torqued in the sequence of the manual, pass by pass, each within its torque at the nut, torqued again only
 * after cycling, and safetied. Compared as fractions: a setting on the very limit is within it.
 *
 * Source: the correction for an adapter as {@link leverShare}; sequence, passes, threads, cycling and safetying are data of the
 * revision (that they are asked for: common practice, no source). Errors: RuleError `out-of-sequence`, `not-cycled`,
 * `torque-missing` with what is missing by name, `reading-impossible`, `bad-adapter`, `not-a-number`.
 *
 * @example one nut, 48 to 54, wrench at 50 with no adapter → { good: true, reasons: [] }
 */
export function judgeTorque(done: TorqueDone, spec: TorqueSpec): TorqueVerdict {
  const asked = passesOf(spec);
  refuseOutOfSequence(done, spec, asked);
  const missing = missingIn(done, spec, asked);
  if (missing) throw new RuleError('torque-missing', missing, 'passes');
  const reasons = asked.flatMap((pass, index) => {
    const given = done.passes[index];
    return (given && settingComplaint(given, pass, { unit: spec.unit, path: `passes[${index}]` })) ?? [];
  });
  return { good: reasons.length === 0, reasons };
}

/** What is not done yet, the first of it by name; undefined when nothing is. */
export function missingTorque(done: TorqueDone, spec: TorqueSpec): string | undefined {
  return missingIn(done, spec, passesOf(spec));
}

function missingIn(done: TorqueDone, spec: TorqueSpec, asked: readonly Pass[]): string | undefined {
  const untreated = spec.groups.find(({ name }) => !done.threads.includes(name));
  if (untreated) return `Threads of ${untreated.name} (${untreated.threads}) are not confirmed`;
  for (const [index, pass] of asked.entries()) {
    if (pass.afterCycling && !cycledEnough(done, spec)) return `${notCycled(spec)}`;
    const given = done.passes[index];
    if (!given || given.setting.trim() === '') return `${titleOf(pass)}: the setting read on the wrench is missing`;
    // Whatever is there stands in its order: what is left begins where it ends.
    const left = pass.places[given.places.length];
    if (left) return `${left} is not torqued at ${pass.title}`;
  }
  const safetied = new Set(done.safetied);
  const loose = spec.groups.find((group) => unsafetied(group, safetied).length > 0);
  return loose && `Not safetied with ${loose.safety}: ${unsafetied(loose, safetied).join(', ')}`;
}

function unsafetied(group: TorqueGroup, safetied: ReadonlySet<string>): string[] {
  return group.safety === undefined ? [] : placesOf(group).filter((place) => !safetied.has(place));
}

/** Throws unless what was done is the beginning of what is asked for, in its order. */
function refuseOutOfSequence(done: TorqueDone, spec: TorqueSpec, asked: readonly Pass[]): void {
  const known = new Set(spec.groups.flatMap((group) => (group.safety === undefined ? [] : placesOf(group))));
  const unknown = done.safetied.find((place) => !known.has(place));
  if (unknown) throw new RuleError('out-of-sequence', `${unknown} is not safetied by this sheet.`, 'safetied');
  for (const [index, given] of done.passes.entries()) {
    const path = `passes[${index}]`;
    const pass = asked[index];
    if (pass?.afterCycling && !cycledEnough(done, spec)) throw new RuleError('not-cycled', `${notCycled(spec)}.`, path);
    const why = pass
      ? sequenceComplaint(given, { pass, isLast: index + 1 === done.passes.length })
      : `Nothing is asked for after ${asked.length} passes.`;
    if (why) throw new RuleError('out-of-sequence', why, path);
  }
}

/** Why a pass is not the one whose turn it was, or its places are not in their order; undefined when they are. */
function sequenceComplaint(given: PassDone, { pass, isLast }: { pass: Pass; isLast: boolean }): string | undefined {
  if (given.group !== pass.group.name || given.pass !== pass.title)
    return `${titleOf(pass)} comes before ${given.group}, ${given.pass}.`;
  const wrong = given.places.findIndex((place, at) => place !== pass.places[at]);
  if (wrong >= 0) return `${pass.places[wrong] ?? 'Nothing'} comes before ${given.places[wrong]} at ${pass.title}.`;
  const left = pass.places[given.places.length];
  return left && !isLast ? `${left} is not torqued at ${pass.title}.` : undefined;
}

function cycledEnough({ cycled }: TorqueDone, { cycles }: TorqueSpec): boolean {
  return cycled !== undefined && cycled >= cycles;
}
const notCycled = ({ cycles }: TorqueSpec) =>
  `Torqued again only after cycling ${cycles} times, which is not confirmed`;

const titleOf = ({ group, title }: Pass) => `${group.name}, ${title}`;

/**
 * Why a setting does not give the torque asked for in this pass, or undefined.
 *
 * Errors: RuleError `not-a-number`, `bad-adapter`, `reading-impossible`.
 */
export function settingComplaint(
  given: Pick<PassDone, 'setting' | 'adapter'>,
  pass: Pass,
  { unit, path }: { unit: TorqueUnit; path: string },
): string | undefined {
  const what = `The setting for ${titleOf(pass)}`;
  const setting = readDecimal(given.setting, { what, path });
  const { over, under } = leverShare(given.adapter);
  // Without a division: setting × over / under lies between low and high.
  const turned = setting.times(over);
  if (turned.gte(pass.low.times(under)) && turned.lte(pass.high.times(under))) return undefined;
  const settings = { low: pass.low.times(under).div(over), high: pass.high.times(under).div(over) };
  refuseImpossible(setting, settings, { what, path });
  const band = settingBand(pass, given.adapter, decimalsOf(pass.group));
  const other = otherUnit(setting, settings, askedFirst(torqueUnits, unit));
  const doubt = other ? ` ${given.setting} ${other} would be inside: look at the scale of the wrench.` : '';
  return `${titleOf(pass)}: the wrench was set to ${given.setting} ${unit}; ${band.low} to ${band.high} is asked for.${doubt}`;
}
