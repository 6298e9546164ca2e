import type { StudyCell } from '@hubwright/rules/measurement';

/** A cell as it is kept: readings digit for digit. */
export interface KeptCell {
  readonly appraiser: string;
  readonly part: string;
  readonly readings: readonly string[];
}

export function cellsAsNumbers(cells: readonly KeptCell[]): StudyCell[] {
  return cells.map((cell) => ({ ...cell, readings: cell.readings.map(Number) }));
}
