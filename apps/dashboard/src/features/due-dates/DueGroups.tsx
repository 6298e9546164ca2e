import { useMemo } from 'react';
import { countOf } from '../../format/numbers.ts';
import { useToday } from '../../format/use-today.ts';
import { fanScale } from '../../ui/pictures/DueFan.tsx';
import { DueTable } from './DueTable.tsx';
import type { DueRow } from './due.ts';
import { type DueGroup, groupedRows } from './due-groups.ts';

/** The due list under a heading a customer, model or month, all on one scale. */
export function DueGroups({ rows, group }: { rows: readonly DueRow[]; group: DueGroup }) {
  const today = useToday();
  const scale = useMemo(
    () =>
      fanScale(
        rows.flatMap((row) => (row.dueOn === 'unknown' ? [] : [{ ...row, dueOn: row.dueOn }])),
        today,
      ),
    [rows, today],
  );
  return groupedRows(rows, group).map(({ name, own }) => {
    const overdue = own.filter((row) => row.overdue).length;
    return (
      <DueTable
        key={name}
        caption={`Coming due, ${name}`}
        rows={own}
        scale={scale}
        tools={
          <>
            <h2>{name}</h2>
            <span className="soft">
              {countOf(own.length, 'unit')}
              {overdue > 0 ? `, ${overdue} overdue` : ''}
            </span>
          </>
        }
      />
    );
  });
}
