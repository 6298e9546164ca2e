import { InstantText } from '../../format/values.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Program } from './governor.ts';

function mark({ isCurrent }: Program) {
  return isCurrent ? ({ state: 'passed', word: 'current' } as const) : ({ state: 'note', word: 'superseded' } as const);
}

/** Programs by model and application; a row opens the whole of one. */
export function ProgramTable({ rows, onOpen }: { rows: readonly Program[]; onOpen: (program: Program) => void }) {
  return (
    <DataTable
      caption="Governor programs"
      rows={rows}
      rowKey={({ id }) => id}
      onOpen={onOpen}
      columns={[
        { id: 'model', header: 'Model', value: ({ model }) => `${model.maker} ${model.designation}` },
        { id: 'airframe', header: 'Aircraft', value: ({ application }) => application.airframe },
        { id: 'engine', header: 'Engine', value: ({ application }) => application.engine },
        { id: 'position', header: 'Position', value: ({ application }) => application.position },
        { id: 'manual', header: 'Manual', value: ({ revision }) => `${revision.manual} rev. ${revision.revision}` },
        { id: 'issue', header: 'Issue', value: ({ issue }) => issue, isNumber: true },
        { id: 'points', header: 'Points', value: ({ content }) => content.points.length, isNumber: true },
        { id: 'state', header: 'State', value: (row) => mark(row).word, cell: (row) => <StateMark {...mark(row)} /> },
        {
          id: 'at',
          header: 'Issued',
          value: ({ issuedAt }) => issuedAt,
          cell: ({ issuedAt }) => <InstantText instant={issuedAt} />,
        },
      ]}
      empty={
        <EmptyState title="No governor program is issued">
          An inspector issues one for each application from the current manual; without it no governor is tested.
        </EmptyState>
      }
    />
  );
}
