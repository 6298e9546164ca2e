import type { AsRead } from '@hubwright/contracts/governor-tests/run';
import { type Pointed, Problem, type ProblemType } from '@hubwright/contracts/problems';
import { RuleError } from '@hubwright/rules/errors';
import { type BenchUnit, inUnit, judgeReading, oilComplaint } from '@hubwright/rules/governor';
import type { Signing } from '../work-orders/public.ts';
import { acceptedAt } from './acceptance.ts';
import { contentOf, limitOf } from './program.ts';
import { nextSequence, type Run, standingOf } from './run.ts';

/** A reading as it comes in: point, digits and units as read. */
export interface GivenReading {
  readonly point: string;
  readonly asRead: AsRead;
  readonly source: 'keyboard' | 'csv' | 'instrument';
}

/** A reading in the units of its program, judged. */
export type JudgedRow = ReturnType<typeof judgeGiven>;

const ruleProblems: Record<string, { type: ProblemType; pointer: string }> = {
  'unit-doubtful': { type: 'unit-doubtful', pointer: '/unit' },
  'units-differ': { type: 'unit-wrong', pointer: '/unit' },
  'reading-impossible': { type: 'reading-impossible', pointer: '/value' },
};

/**
 * Throws `point-unknown`, `unit-wrong`, `unit-doubtful`, `reading-impossible` or `oil-temperature`; a reading that is merely bad is kept
 * as what it is.
 */
export function judgeGiven(run: Pick<Run, 'program' | 'accepted'>, { point: name, asRead, source }: GivenReading) {
  const content = contentOf(run);
  const point = content.points.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (!point) throw refusal('point-unknown', '/point', `The program has no point “${name}”`);
  const taken = { ...asRead, value: Number(asRead.value), unit: asRead.unit as BenchUnit };
  const limit = limitOf(point, acceptedAt(run, point.name));
  const judged = orProblem(() => judgeReading(taken, limit, limitOf(point, undefined)));
  const oil = { value: Number(asRead.oilTemperature), unit: asRead.oilUnit as BenchUnit };
  const { low, high, unit } = content.oil;
  const complaint = orProblem(() => oilComplaint(oil, { low: Number(low), high: Number(high), unit }), '/oilUnit');
  if (complaint) throw refusal('oil-temperature', '/oilTemperature', `The oil: ${complaint}`);
  const value = taken.unit === point.unit ? asRead.value : digits(judged.value);
  const inBand = inUnit(oil.value, oil.unit, unit);
  return {
    ...{ point: point.name, value, pass: judged.pass, asRead: { ...asRead }, source },
    compared: point.method === 'rounding' ? judged.compared.toFixed(limit.decimals) : value,
    oilTemperature: oil.unit === unit ? asRead.oilTemperature : digits(inBand),
  };
}

/** Keeps judged readings in the order given; how the run stands then. */
export async function writeReadings(context: Signing, run: Run, judged: readonly JudgedRow[]) {
  const { tx, now, actor, entryId, newId } = context;
  const first = nextSequence(run);
  const rows = judged.map((row, index) => ({
    ...row,
    ...{ id: newId(), runId: run.id, sequence: first + index },
    ...{ takenBy: actor.personId, takenAt: now, entryId },
  }));
  await tx.governorReading.createMany({ data: rows });
  await tx.governorRun.update({ where: { id: run.id }, data: { version: run.version + 1 } });
  const { open, out } = standingOf({ ...run, readings: [...run.readings, ...rows] });
  return { version: run.version + 1, open: [...open], out: [...out] };
}

function orProblem<T>(compute: () => T, pointer?: string): T {
  try {
    return compute();
  } catch (error) {
    const known = error instanceof RuleError ? ruleProblems[error.code] : undefined;
    if (!known) throw error;
    throw refusal(known.type, pointer ?? known.pointer, (error as RuleError).message);
  }
}

function refusal(type: ProblemType, pointer: string, detail: string): Problem {
  const at: Pointed = { pointer, detail };
  return new Problem(type, detail, {}, [at]);
}

/** A converted number to six places, without what is no digit of it. */
function digits(value: number): string {
  return value.toFixed(6).replace(/\.?0+$/, '');
}
