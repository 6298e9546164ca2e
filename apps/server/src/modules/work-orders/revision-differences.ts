import type { TravelerDetail } from '@hubwright/contracts/work-orders/traveler-operations';
import type { difference } from '@hubwright/contracts/work-orders/traveler-shapes';
import type { z } from 'zod';
import type { KitDifference } from '../kits/public.ts';
import { limitsInWords } from './judge-values.ts';
import { sheetWords } from './sheets/sheet-words.ts';
import type { NewMeasure, NewStep } from './splice-steps.ts';

export type Difference = z.output<typeof difference>;

/** A step as it is on a traveler. */
export interface StepNow extends NewStep {
  readonly id: string;
  readonly state: TravelerDetail['steps'][number]['state'];
  readonly findingId: string | null;
}

/** Where a step goes: `kept` as it is, `dropped` because the route has it no more, `renewed` from the route, or `copied` from it. */
export type Placed<S extends StepNow> =
  | { readonly kept: S }
  | { readonly dropped: S }
  | { readonly renewed: S; readonly by: NewStep }
  | { readonly copied: NewStep };

/** Done again because a test failed or strips proved nothing; it repeats a step of the route under a title of its own. */
const isRepeat = ({ attempt, title }: StepNow) => attempt > 1 && title.includes(', again after ');

const isOpen = (step: StepNow) => step.state === 'open' && step.findingId === null && !isRepeat(step);

/** A step that answers one of the route; what was dropped before or repairs a finding does not. */
const isOfRoute = (step: StepNow) => step.findingId === null && step.state !== 'not-needed' && !isRepeat(step);

/** What failed is done again behind its repair, under the title of the step it repeats. */
const isAgain = (step: StepNow, { title }: NewStep) =>
  (step.findingId !== null || isRepeat(step)) && step.title.startsWith(`${title}, again after `);

/** A step as far as doing it goes: where one differs, the work was not done as the revision now says. */
const isSameWork = (one: NewStep, other: NewStep) =>
  wordsOf({ ...one, phase: other.phase }) === wordsOf(other) && limitsOf(one) === limitsOf(other);

/**
 * Lays the steps of the current revision's route over those of a traveler, by title. What is signed or failed stays as it is, and
 * is done again where it was signed by other words or limits; open steps are renewed from the route or dropped; repairs of
 * findings stay, what they measure again is measured by the new limits; what is new comes, all in the new order.
 */
export function layOver<S extends StepNow>(now: readonly S[], route: readonly NewStep[]): Placed<S>[] {
  const renewal = (step: S) => (isOpen(step) ? route.find(({ title }) => title === step.title) : undefined);
  const placed: Placed<S>[] = now.filter((step) => !renewal(step)).map((step) => stays(step, route));
  let after = -1;
  for (const by of route) {
    const own = placed.findLastIndex((one) => 'kept' in one && isOfRoute(one.kept) && one.kept.title === by.title);
    const last = placed.findLastIndex(
      (one, index) =>
        index === own || ('kept' in one && isAgain(one.kept, by)) || ('renewed' in one && isAgain(one.renewed, by)),
    );
    const renewed = now.find((step) => renewal(step) === by);
    after = Math.max(after, own);
    if (renewed || own < 0) {
      const stoodBehind = (step: S) => !renewed || now.indexOf(renewed) > now.indexOf(step);
      after = pastRepairs(placed, after + 1, (step) => isBehind(step, by) && stoodBehind(step));
      placed.splice(after, 0, renewed ? { renewed, by } : { copied: by });
    } else if (isDoneAgain(placed[last], by)) {
      if (last === own) after += 1;
      placed.splice(last + 1, 0, { copied: by });
    }
  }
  return placed;
}

const phases = ['evaluation', 'repair', 'build', 'final'];

/** Whether a step of the route is not of an earlier phase than one that repairs a finding. */
function isBehind(step: StepNow, by: NewStep): boolean {
  return phases.indexOf(by.phase) >= phases.indexOf(step.phase);
}

/** The place behind the repairs of findings that begin at `at`: what was blended is painted afterwards, whatever the revision. */
function pastRepairs<S extends StepNow>(
  placed: readonly Placed<S>[],
  at: number,
  isBefore: (step: S) => boolean,
): number {
  const one = placed[at];
  const step = one && ('kept' in one ? one.kept : 'renewed' in one ? one.renewed : undefined);
  return step && step.findingId !== null && isBefore(step) ? pastRepairs(placed, at + 1, isBefore) : at;
}

function stays<S extends StepNow>(step: S, route: readonly NewStep[]): Placed<S> {
  if (isOpen(step)) return { dropped: step };
  const by = step.state === 'open' ? route.find((one) => isAgain(step, one)) : undefined;
  if (!by && step.state === 'open' && isRepeat(step)) return { dropped: step };
  const { title, phase, branch, attempt } = step;
  return by ? { renewed: step, by: { ...by, title, phase, branch, attempt } } : { kept: step };
}

function isDoneAgain(last: Placed<StepNow> | undefined, by: NewStep): boolean {
  return last !== undefined && 'kept' in last && last.kept.state === 'signed' && !isSameWork(last.kept, by);
}

/** What differs between a traveler's steps and the route, line by line. Pure. */
export function stepDifferences(where: string, now: readonly StepNow[], route: readonly NewStep[]): Difference[] {
  const removed = now.filter((step) => isOfRoute(step) && !route.some(({ title }) => title === step.title));
  const differences = removed.map((step) =>
    line('step', { where, what: step.title, before: wordsOf(step), after: null }, becomes[step.state].removed),
  );
  for (const step of route) {
    const before = now.findLast((one) => (isOfRoute(one) && one.title === step.title) || isAgain(one, step));
    if (!before) differences.push(line('step', { where, what: step.title, before: null, after: wordsOf(step) }));
    else
      differences.push(...changesOf(where, { ...before, phase: before.findingId ? step.phase : before.phase }, step));
  }
  return differences;
}

/** What becomes of a step by its state, in words. */
const becomes: Record<StepNow['state'], { readonly removed: string[]; readonly changed: string[] }> = {
  open: { removed: [], changed: [] },
  signed: {
    removed: ['signed already; it stays as it was signed'],
    changed: ['signed already; it stays as it was signed, and is done again by this revision'],
  },
  failed: {
    removed: ['failed already; its finding stands'],
    changed: ['failed already; its finding decides, with the new revision in hand'],
  },
  'not-needed': { removed: [], changed: [] },
};

function changesOf(where: string, before: StepNow, after: NewStep): Difference[] {
  const consequences = becomes[before.state].changed;
  const own =
    wordsOf(before) === wordsOf(after)
      ? []
      : [line('step', { where, what: after.title, before: wordsOf(before), after: wordsOf(after) }, consequences)];
  const names = [...new Set([...before.measures, ...after.measures].map(({ name }) => name))];
  return [
    ...own,
    ...names.flatMap((name) => {
      const [was, is] = [limitOf(before.measures, name), limitOf(after.measures, name)];
      return was === is
        ? []
        : [line('limit', { where: `${where}, ${after.title}`, what: name, before: was, after: is }, consequences)];
    }),
  ];
}

type Text = Pick<Difference, 'where' | 'what' | 'before' | 'after'>;

function line(area: Difference['area'], text: Text, consequences: readonly string[] = []): Difference {
  const change = text.before === null ? 'added' : text.after === null ? 'removed' : 'changed';
  return { area, change, ...text, consequences: [...consequences] };
}

/** The kit's part of it, line by line. */
export function kitDifferences(differences: readonly KitDifference[]): Difference[] {
  return differences.map(({ consequences, ...text }) => line('kit', text, consequences));
}

/** A life limit as a revision has it. */
export interface LifeLimitOf {
  readonly hoursTenths: number | null;
  readonly cycles: number | null;
  readonly overhauls: number | null;
}

/** Life limits by part number, line by line; `fitted` says where parts of a number sit in this unit. */
export function lifeDifferences(
  now: ReadonlyMap<string, LifeLimitOf>,
  then: ReadonlyMap<string, LifeLimitOf>,
  fitted: ReadonlyMap<string, readonly string[]>,
): Difference[] {
  const numbers = [...new Set([...now.keys(), ...then.keys()])].sort();
  return numbers.flatMap((what) => {
    const [before, after] = [lifeWords(now.get(what)), lifeWords(then.get(what))];
    const places = fitted.get(what) ?? [];
    const consequences = after && places.length > 0 ? [`fitted here: ${places.join(', ')}; release goes by it`] : [];
    return before === after ? [] : [line('life', { where: 'life limit', what, before, after }, consequences)];
  });
}

const hours = new Intl.NumberFormat('en-US', { minimumFractionDigits: 1, maximumFractionDigits: 1 });

function lifeWords(limit: LifeLimitOf | undefined): string | null {
  if (!limit) return null;
  const { hoursTenths, cycles, overhauls } = limit;
  const many = (count: number | null, one: string) =>
    count === null ? [] : [`${count} ${one}${count === 1 ? '' : 's'}`];
  return [
    ...(hoursTenths === null ? [] : [`${hours.format(hoursTenths / 10)} h`]),
    ...many(cycles, 'cycle'),
    ...many(overhauls, 'overhaul'),
  ]
    .join(' or ')
    .concat(' since new');
}

function wordsOf(step: NewStep): string {
  return [
    step.instruction,
    `${step.process}, ${step.level}`,
    `${step.kind}, ${step.phase}`,
    step.instrumentKind ? `with ${step.instrumentKind}` : '',
    step.equipmentKind ? `in or with ${step.equipmentKind}` : '',
    step.materials.length > 0 ? `material ${step.materials.join(', ')}` : '',
    step.caution ?? '',
    step.fact ? `shows: ${step.fact}` : '',
    step.branch ? `beside others, as ${step.branch}` : '',
    step.waitMinutes > 0 ? `then waits ${step.waitMinutes} min` : '',
    step.outside ? 'at an outside vendor' : '',
    step.batched ? 'in a load' : '',
    step.tools.length > 0 ? `tools ${step.tools.join(', ')}` : '',
    step.form.length > 0
      ? `form: ${step.form.map(({ name, unit, confirm }) => (confirm ? `confirm ${name}` : unit ? `${name} (${unit})` : name)).join(', ')}`
      : '',
    step.peening ? peeningWords(step.peening) : '',
    step.sheet ? sheetWords(step.sheet) : '',
    step.mostRepairs === 2 ? '' : `at most ${step.mostRepairs} repairs`,
  ]
    .filter(Boolean)
    .join(' · ');
}

function peeningWords({ mediaSize, coverage, areas }: NonNullable<NewStep['peening']>): string {
  const bands = areas.map(({ name, strip, low, high, unit }) => `${name} ${low} to ${high} ${unit} ${strip}`);
  return `peened with ${mediaSize}, ${coverage} %: ${bands.join(', ')}`;
}

function limitOf(measures: readonly NewMeasure[], name: string): string | null {
  const measure = measures.find((one) => one.name === name);
  if (!measure) return null;
  return `${limitsInWords(measure)}, ${measure.decimals === 1 ? '1 decimal' : `${measure.decimals} decimals`}, ${measure.method}`;
}

function limitsOf({ measures }: NewStep): string {
  return measures.map(({ name }) => `${name} ${limitOf(measures, name)}`).join('; ');
}
