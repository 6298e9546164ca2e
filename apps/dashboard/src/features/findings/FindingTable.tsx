import type { ReactNode } from 'react';
import { AgeText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type Finding, findingMark } from './findings.ts';

const columns: readonly Column<Finding>[] = [
  {
    id: 'number',
    header: 'Finding',
    value: (row) => row.number,
    cell: (row) => (
      <>
        <p className="code">{row.number}</p>
        <p className="soft small code">{row.workOrder.number}</p>
      </>
    ),
  },
  {
    id: 'what',
    header: 'What was found',
    value: (row) => `${row.traveler.title}, ${row.place}: ${row.damage}, ${row.description}`,
    cell: (row) => (
      <>
        <p>
          {row.traveler.title}, {row.place}
          {row.critical ? <strong> (critical area)</strong> : null}
        </p>
        <p className="soft small">
          {row.damage.replaceAll('-', ' ')}: {row.description}
        </p>
      </>
    ),
  },
  {
    id: 'raised',
    header: 'Raised',
    value: (row) => row.raisedAt,
    cell: (row) => (
      <>
        {row.raisedBy.initials}, <AgeText instant={row.raisedAt} /> ago
      </>
    ),
  },
  {
    id: 'state',
    header: 'Stands',
    value: (row) => findingMark(row).word,
    cell: (row) => <StateMark {...findingMark(row)} />,
  },
];

/** Findings, oldest first; a row opens the finding beside it. */
export function FindingTable(props: {
  rows: readonly Finding[];
  tools: ReactNode;
  onOpen: (finding: Finding) => void;
}) {
  return (
    <DataTable
      caption="Findings"
      rows={props.rows}
      columns={columns}
      rowKey={(row) => row.id}
      onOpen={props.onOpen}
      tools={props.tools}
      empty={<EmptyState title="No finding fits">Findings are raised on the traveler of the part.</EmptyState>}
    />
  );
}
