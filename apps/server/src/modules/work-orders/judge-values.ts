import type { Chart } from '@hubwright/contracts/manuals/measures';
import { Problem } from '@hubwright/contracts/problems';
import { mostBend } from '@hubwright/rules/blades';
import { implausible, judge } from '@hubwright/rules/limits';

/** A value to measure, as copied from the revision: limits are decimals as the manual prints them. */
export interface MeasureAsked {
  readonly id: string;
  readonly name: string;
  readonly unit: string;
  readonly decimals: number;
  readonly method: string;
  readonly low: string | null;
  readonly high: string | null;
  /** The most allowed goes by this chart against another measure. */
  readonly chart: Chart | null;
}

export interface JudgedValue {
  readonly measureId: string;
  /** As it was entered, digit for digit. */
  readonly value: string;
  /** What was compared with the limits, after the revision's rounding. */
  readonly compared: string;
  readonly pass: boolean;
}

type Given = readonly { readonly measureId: string; readonly value: string }[];

/**
 * Judges every value of a measured step. What cannot be a reading is told by the limits as the manual prints them, narrowed or not.
 * Throws `value-unknown` or `values-missing`: all are needed, once each; and `reading-impossible`.
 */
export function judgeValues(
  asked: readonly MeasureAsked[],
  given: Given,
  printed: readonly MeasureAsked[] = asked,
): JudgedValue[] {
  const byMeasure = new Map(given.map((one) => [one.measureId, one.value]));
  const known = new Set(asked.map(({ id }) => id));
  if (byMeasure.size !== given.length || given.some(({ measureId }) => !known.has(measureId))) {
    throw new Problem('value-unknown', 'A value is entered twice or belongs to another step', {}, [
      { pointer: '/values', detail: 'Enter each value of this step once' },
    ]);
  }
  const missing = asked.filter(({ id }) => !byMeasure.has(id)).map(({ name }) => name);
  if (missing.length > 0) {
    throw new Problem('values-missing', `Not measured: ${missing.join(', ')}`, { missing }, [
      { pointer: '/values', detail: `Not measured: ${missing.join(', ')}` },
    ]);
  }
  refuseImpossible(printed, given);
  const readingOf = (name: string) => byMeasure.get(asked.find((one) => one.name === name)?.id ?? '') ?? '';
  return asked.map((measure) => {
    const value = byMeasure.get(measure.id) ?? '';
    const now = byChart(measure, readingOf);
    return now ? judgeOne(now, value) : { measureId: measure.id, value, compared: value, pass: false };
  });
}

/** A measure that goes by a chart, with the most allowed at what was read; `null` where the chart allows nothing. */
function byChart(measure: MeasureAsked, readingOf: (name: string) => string): MeasureAsked | null {
  const { chart } = measure;
  if (!chart) return measure;
  const high = mostBend(chart.points, readingOf(chart.by));
  return high === null ? null : { ...measure, high };
}

/** Another unit, or a slip of the decimal point: asked about before it becomes a finding. Throws `reading-impossible`. */
function refuseImpossible(asked: readonly MeasureAsked[], given: Given): void {
  const wrong = given.flatMap(({ measureId, value }, index) => {
    const measure = asked.find(({ id }) => id === measureId);
    const limit = (text: string | null | undefined) => (text === null || text === undefined ? undefined : Number(text));
    const why = implausible(Number(value), { low: limit(measure?.low), high: limit(measure?.high) });
    return why
      ? [{ pointer: `/values/${index}/value`, detail: `${measure?.name} ${value} ${measure?.unit} is ${why}` }]
      : [];
  });
  const [first] = wrong;
  if (first) throw new Problem('reading-impossible', first.detail, {}, wrong);
}

function judgeOne(measure: MeasureAsked, value: string): JudgedValue {
  const { low, high, decimals, method } = measure;
  // The manual asks for some values without a limit: they are recorded.
  if (low === null && high === null) return { measureId: measure.id, value, compared: value, pass: true };
  const rounding = method === 'rounding';
  const { pass, compared } = judge(Number(value), {
    decimals,
    method: rounding ? 'rounding' : 'absolute',
    ...(low === null ? {} : { low: Number(low) }),
    ...(high === null ? {} : { high: Number(high) }),
  });
  return { measureId: measure.id, value, compared: rounding ? compared.toFixed(Math.max(0, decimals)) : value, pass };
}

/** What is outside, in words: name, value and limits. */
export function outsideInWords(asked: readonly MeasureAsked[], judged: readonly JudgedValue[]): string[] {
  return judged
    .filter(({ pass }) => !pass)
    .flatMap(({ measureId, value }) => {
      const measure = asked.find(({ id }) => id === measureId);
      return measure ? [`${measure.name} ${value} ${measure.unit} (limits ${limitsInWords(measure)})`] : [];
    });
}

export function limitsInWords({
  low,
  high,
  unit,
  chart,
}: Pick<MeasureAsked, 'low' | 'high' | 'unit' | 'chart'>): string {
  if (chart) {
    const points = chart.points.map(({ at, most }) => `${most} at ${at}`).join(', ');
    return `at most, by ${chart.by}: ${points} ${unit}`;
  }
  if (low !== null && high !== null) return `${low} to ${high} ${unit}`;
  if (low !== null) return `at least ${low} ${unit}`;
  return high !== null ? `at most ${high} ${unit}` : 'none';
}
