import type { TravelerDetail } from '@hubwright/contracts/work-orders/traveler-operations';
import type { difference } from '@hubwright/contracts/work-orders/traveler-shapes';
import type { z } from 'zod';
import { limitsInWords } from './judge-values.ts';
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

/**
 * Lays the steps of the current revision's route over those of a traveler, by title. What is signed, failed or part of a
 * finding's repair stays as it is; open steps are renewed from the route or dropped; what is new comes, all in the new order.
 */
export function layOver<S extends StepNow>(now: readonly S[], route: readonly NewStep[]): Placed<S>[] {
  const isOpen = (step: S) => step.state === 'open' && step.findingId === null;
  const renews = (step: S) => isOpen(step) && route.some(({ title }) => title === step.title);
  const placed: Placed<S>[] = now
    .filter((step) => !renews(step))
    .map((step) => (isOpen(step) ? { dropped: step } : { kept: step }));
  let after = -1;
  for (const by of route) {
    const at = placed.findIndex((one) => 'kept' in one && isOfRoute(one.kept) && one.kept.title === by.title);
    const renewed = now.find((step) => isOpen(step) && step.title === by.title);
    if (at >= 0) after = Math.max(after, at);
    else placed.splice(++after, 0, renewed ? { renewed, by } : { copied: by });
  }
  return placed;
}

/** A step that answers one of the route; what was dropped before or repairs a finding does not. */
function isOfRoute({ findingId, state }: StepNow): boolean {
  return findingId === null && state !== 'not-needed';
}

/** What differs between a traveler's steps and the route, line by line. Pure. */
export function stepDifferences(where: string, now: readonly StepNow[], route: readonly NewStep[]): Difference[] {
  const old = now.filter(isOfRoute);
  const removed = old.filter((step) => !route.some(({ title }) => title === step.title));
  const differences = removed.map((step) =>
    line('step', { where, what: step.title, before: wordsOf(step), after: null }, step.state === 'open'),
  );
  for (const step of route) {
    const before = old.find(({ title }) => title === step.title);
    if (!before) differences.push(line('step', { where, what: step.title, before: null, after: wordsOf(step) }, true));
    else differences.push(...changesOf(where, before, step));
  }
  return differences;
}

function changesOf(where: string, before: StepNow, after: NewStep): Difference[] {
  const applies = before.state === 'open';
  const own =
    wordsOf(before) === wordsOf(after)
      ? []
      : [line('step', { where, what: after.title, before: wordsOf(before), after: wordsOf(after) }, applies)];
  const names = [...new Set([...before.measures, ...after.measures].map(({ name }) => name))];
  return [
    ...own,
    ...names.flatMap((name) => {
      const [was, is] = [limitOf(before.measures, name), limitOf(after.measures, name)];
      return was === is
        ? []
        : [line('limit', { where: `${where}, ${after.title}`, what: name, before: was, after: is }, applies)];
    }),
  ];
}

type Text = Pick<Difference, 'where' | 'what' | 'before' | 'after'>;

function line(area: Difference['area'], text: Text, applies: boolean): Difference {
  const change = text.before === null ? 'added' : text.after === null ? 'removed' : 'changed';
  return { area, change, ...text, applies };
}

function wordsOf(step: NewStep): string {
  return [
    step.instruction,
    `${step.process}, ${step.level}`,
    `${step.kind}, ${step.phase}`,
    step.instrumentKind ? `with ${step.instrumentKind}` : '',
    step.caution ?? '',
    step.fact ? `shows: ${step.fact}` : '',
  ]
    .filter(Boolean)
    .join(' · ');
}

function limitOf(measures: readonly NewMeasure[], name: string): string | null {
  const measure = measures.find((one) => one.name === name);
  if (!measure) return null;
  return `${limitsInWords(measure)}, ${measure.decimals} decimals, ${measure.method}`;
}

/** Kit list lines that differ between two revisions, by part and position. */
export function kitDifferences(before: readonly KitListed[], after: readonly KitListed[]): Difference[] {
  const keys = [...new Set([...before, ...after].map(keyOf))].sort();
  return keys.flatMap((key) => {
    const was = before.find((one) => keyOf(one) === key);
    const is = after.find((one) => keyOf(one) === key);
    const [from, to] = [was ? kitWords(was) : null, is ? kitWords(is) : null];
    if (from === to) return [];
    const named = is ?? was;
    return [
      line(
        'kit',
        { where: 'Kit list', what: `${named?.part ?? ''} at ${named?.position ?? ''}`, before: from, after: to },
        true,
      ),
    ];
  });
}

export interface KitListed {
  readonly part: string;
  readonly position: string;
  readonly quantity: number;
  readonly minimum: number | null;
  readonly source: string;
}

const keyOf = (line: KitListed) => `${line.position} ${line.part}`;
const kitWords = (line: KitListed) =>
  `${line.minimum === null ? line.quantity : `${line.minimum} to ${line.quantity}`}, ${line.source}`;
