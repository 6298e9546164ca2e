import { RuleError } from '../errors/index.ts';

/** What one appraiser read on one part, trial after trial, in one unit throughout. */
export interface StudyCell {
  readonly appraiser: string;
  readonly part: string;
  readonly readings: readonly number[];
}

/** A whole study: every appraiser read every part equally often. `at(a, p)` are the readings of one cell. */
export interface StudyGrid {
  readonly appraisers: readonly string[];
  readonly parts: readonly string[];
  readonly trials: number;
  at(appraiser: number, part: number): readonly number[];
}

/** Throws `study-too-small`, `cell-twice`, `cell-missing`, `trials-differ` or `not-a-reading`, each with its place. */
export function gridOf(cells: readonly StudyCell[]): StudyGrid {
  const appraisers = [...new Set(cells.map(({ appraiser }) => appraiser))];
  const parts = [...new Set(cells.map(({ part }) => part))];
  const trials = cells[0]?.readings.length ?? 0;
  if (appraisers.length < 2 || parts.length < 2 || trials < 2)
    throw new RuleError('study-too-small', 'Two appraisers, two parts and two trials are the least', 'cells');
  const found = new Map<string, readonly number[]>();
  for (const [index, cell] of cells.entries()) {
    const key = JSON.stringify([cell.appraiser, cell.part]);
    const path = `cells[${index}]`;
    if (found.has(key)) throw new RuleError('cell-twice', `${cell.appraiser} on ${cell.part} is given twice`, path);
    if (cell.readings.length !== trials)
      throw new RuleError('trials-differ', `${trials} trials everywhere, ${cell.readings.length} here`, path);
    if (!cell.readings.every(Number.isFinite)) throw new RuleError('not-a-reading', 'A reading is a number', path);
    found.set(key, cell.readings);
  }
  for (const appraiser of appraisers)
    for (const part of parts)
      if (!found.has(JSON.stringify([appraiser, part])))
        throw new RuleError('cell-missing', `${appraiser} did not read ${part}`, 'cells');
  const at = (a: number, p: number) => found.get(JSON.stringify([appraisers[a], parts[p]])) ?? [];
  return { appraisers, parts, trials, at };
}

export const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
export const rangeOf = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
export const upTo = (count: number) => Array.from({ length: count }, (_, index) => index);
