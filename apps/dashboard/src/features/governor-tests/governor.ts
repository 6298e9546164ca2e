import { benchLinkOperations } from '@hubwright/contracts/governor-tests/link-operations';
import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import type { GovernorProgram } from '@hubwright/contracts/governor-tests/program';
import type { GovernorRunDetail, GovernorRun as Row, WaitingGovernor } from '@hubwright/contracts/governor-tests/run';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { RuleError } from '@hubwright/rules/errors';
import { type BenchUnit, judgeReading, type PointLimit } from '@hubwright/rules/governor';
import { queryFor } from '../../api/query.ts';
import type { State } from '../../ui/StateMark.tsx';

export type Program = GovernorProgram;
export type Point = Program['content']['points'][number];
export type Run = GovernorRunDetail;
export type RunRow = Row;
export type Waiting = WaitingGovernor;
export type Standing = Run['standing'][number];

export const waitingQuery = queryFor(governorOperations.waitingForGovernorBench, {});
export const runQuery = (runId: string) => queryFor(governorOperations.governorRun, { runId });
export const runsQuery = queryFor(governorOperations.listGovernorRuns, { limit: 50 });
export const programsQuery = (show: 'current' | 'all') =>
  queryFor(governorOperations.listGovernorPrograms, { show, limit: 100 });
export const benchesQuery = queryFor(processOperations.listInstruments, { kind: 'governor-bench', limit: 50 });
export const linkQuery = (instrumentId: string) => queryFor(benchLinkOperations.benchLink, { instrumentId });

export const runMarks: Record<RunRow['state'], { state: State; word: string }> = {
  open: { state: 'open', word: 'under way' },
  passed: { state: 'passed', word: 'passed' },
  failed: { state: 'stop', word: 'failed' },
  'broken-off': { state: 'note', word: 'broken off' },
};
export const pointMarks: Record<Standing['state'], { state: State; word: string }> = {
  open: { state: 'open', word: 'to take' },
  good: { state: 'passed', word: 'good' },
  out: { state: 'stop', word: 'out' },
  reopened: { state: 'waiting', word: 'take again' },
};

/** `degF` → `°F`; other units are written as they are called. */
export function unitWord(unit: string): string {
  return unit === 'degF' ? '°F' : unit === 'degC' ? '°C' : unit;
}

export function limitWords({ low, high, unit }: Pick<Point, 'low' | 'high' | 'unit'>): string {
  const word = unitWord(unit);
  if (low !== undefined && high !== undefined) return `${low} to ${high} ${word}`;
  return low === undefined ? `at most ${high} ${word}` : `at least ${low} ${word}`;
}

/** A point with the limits its readings are accepted by in a run: the manual's, or those the guard band leaves inside them. */
export function acceptedPoint(run: Pick<Run, 'standing'>, point: Point): Point & { readonly isNarrowed: boolean } {
  const accepted = run.standing.find((one) => one.point === point.name)?.accepted;
  if (!accepted) return { ...point, isNarrowed: false };
  const { low, high, decimals } = accepted;
  return { ...point, decimals, low: low ?? undefined, high: high ?? undefined, isNarrowed: true };
}

/** Limits as they are shown beside a reading: the manual's, and those it is accepted by where the guard band narrows them. */
export function shownLimits(run: Pick<Run, 'standing'>, point: Point): string {
  const accepted = acceptedPoint(run, point);
  return accepted.isNarrowed ? `${limitWords(point)}; accepted ${limitWords(accepted)}` : limitWords(point);
}

function limitOf({ low, high, decimals, method, unit }: Point): PointLimit {
  return {
    ...{ decimals, method, unit },
    ...(low === undefined ? {} : { low: Number(low) }),
    ...(high === undefined ? {} : { high: Number(high) }),
  };
}

/** What the rule says of digits as they are typed, before they are sent; the server says the same again. */
export function verdictOf(
  { accepted, printed }: { accepted: Point; printed: Point },
  text: string,
  read: { unit: BenchUnit; unitChecked: boolean },
) {
  if (!/^-?\d{1,12}(\.\d{1,8})?$/.test(text)) return { kind: 'none' } as const;
  try {
    const { pass, value } = judgeReading({ value: Number(text), ...read }, limitOf(accepted), limitOf(printed));
    return { kind: pass ? 'good' : 'out', value } as const;
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return { kind: error.code === 'unit-doubtful' ? 'doubtful' : 'impossible', why: error.message } as const;
  }
}

/** Points that stand open or out first in the order of the program: what the bench does next. */
export function nextPoint({ standing }: Pick<Run, 'standing'>): string | undefined {
  const next = standing.find(({ state }) => state !== 'good');
  return next?.point;
}
