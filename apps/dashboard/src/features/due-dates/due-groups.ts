import { monthWords } from '../../ui/pictures/TurnaroundByMonth.tsx';
import type { DueRow } from './due.ts';

export const dueGroups = ['none', 'customer', 'model', 'month'] as const;
export type DueGroup = (typeof dueGroups)[number];

interface Group {
  readonly name: string;
  readonly own: readonly DueRow[];
}

const nameOf: Record<Exclude<DueGroup, 'none'>, (row: DueRow) => string> = {
  customer: ({ customer }) => customer.name,
  model: ({ unit }) => unit.designation,
  month: ({ dueOn }) => (dueOn === 'unknown' ? 'not known' : monthWords(dueOn.slice(0, 7))),
};

/** Rows under their group, groups in the order of their first row: the most urgent first. */
export function groupedRows(rows: readonly DueRow[], group: DueGroup): readonly Group[] {
  if (group === 'none') return [{ name: 'All', own: rows }];
  const groups = new Map<string, DueRow[]>();
  for (const row of rows) {
    const name = nameOf[group](row);
    const own = groups.get(name);
    if (own) own.push(row);
    else groups.set(name, [row]);
  }
  return [...groups].map(([name, own]) => ({ name, own }));
}
