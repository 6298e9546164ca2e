import { quantityText } from '@hubwright/contracts/inventory/quantity';
import type { ReactNode } from 'react';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type SheetLine, standingOf } from './build-sheet.ts';

const sourceWords = { new: 'new', reused: 'reused after inspection', any: 'new or reused' } as const;

function columnsOf(actions: (line: SheetLine) => ReactNode): readonly Column<SheetLine>[] {
  return [
    {
      id: 'position',
      header: 'Position and part',
      value: (row) => `${row.position}, ${row.part.number}`,
      cell: (row) => (
        <>
          <p>{row.position}</p>
          <p className="soft small">
            <span className="code">{row.part.number}</span> {row.part.description}
          </p>
        </>
      ),
    },
    { id: 'source', header: 'Must be', value: (row) => sourceWords[row.source] },
    {
      id: 'count',
      header: 'In',
      value: (row) => row.installed,
      cell: (row) =>
        row.minimum === null
          ? `${row.installed} of ${quantityText(row.required, row.part.issueUnit)}`
          : `${row.installed}, ${row.minimum} to ${quantityText(row.required, row.part.issueUnit)}`,
      isNumber: true,
    },
    {
      id: 'state',
      header: 'State',
      value: (row) => standingOf(row).word,
      cell: (row) => <StateMark {...standingOf(row)} />,
    },
    { id: 'do', header: 'Do', value: () => '', cell: actions, canSort: false },
  ];
}

/** The kit list as a checklist tied to scans: what each position needs and what sits there. */
export function PositionTable(props: {
  lines: readonly SheetLine[];
  actions: (line: SheetLine) => ReactNode;
  tools: ReactNode;
}) {
  return (
    <DataTable
      caption="Positions of this build"
      rows={props.lines}
      columns={columnsOf(props.actions)}
      rowKey={(row) => row.lineId}
      tools={props.tools}
      empty={<EmptyState title="Every position here is filled">Choose “All” to see what went in.</EmptyState>}
    />
  );
}
