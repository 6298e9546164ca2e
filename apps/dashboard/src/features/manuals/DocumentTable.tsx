import { documentKindTitles } from '@hubwright/contracts/manuals/words';
import type { ReactNode } from 'react';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { currentIssue, type DocumentIssue, type WorkDocument } from './documents.ts';

/** Whether someone asked the issuer if this is the current issue, and when. */
export function IssueMark({ issue }: { issue: DocumentIssue | undefined }) {
  if (issue?.state !== 'current') return <StateMark state="stop" word={issue?.state ?? 'withdrawn'} />;
  if (issue.currencyCheckedOn === null) return <StateMark state="waiting" word="never checked" />;
  return (
    <span className="quantity">
      <StateMark state="passed" word="checked" /> <DateText date={issue.currencyCheckedOn} />
    </span>
  );
}

const columns: readonly Column<WorkDocument>[] = [
  {
    id: 'number',
    header: 'Document',
    value: (row) => row.number,
    cell: (row) => <span className="code">{row.number}</span>,
  },
  { id: 'kind', header: 'Kind', value: (row) => documentKindTitles[row.kind] },
  { id: 'title', header: 'Title', value: (row) => row.title },
  { id: 'issuer', header: 'Issued by', value: (row) => row.issuer },
  { id: 'models', header: 'Models', value: (row) => row.models.map(({ designation }) => designation).join(', ') },
  { id: 'issue', header: 'Issue', value: (row) => currentIssue(row)?.issue },
  {
    id: 'issued',
    header: 'Of',
    value: (row) => currentIssue(row)?.issuedOn,
    cell: (row) => {
      const issue = currentIssue(row);
      return issue ? <DateText date={issue.issuedOn} /> : null;
    },
  },
  {
    id: 'checked',
    header: 'Currency checked',
    value: (row) => currentIssue(row)?.currencyCheckedOn,
    cell: (row) => <IssueMark issue={currentIssue(row)} />,
  },
];
const besideAnother = ['number', 'title', 'issue', 'checked'];

/** Papers work goes by beside the overhaul manuals. */
export function DocumentTable(props: {
  documents: readonly WorkDocument[];
  hrefOf: (row: WorkDocument) => string;
  tools: ReactNode;
  /** Beside an opened document there is room for less. */
  isNarrow: boolean;
}) {
  return (
    <DataTable
      caption="Documents"
      rows={props.documents}
      columns={props.isNarrow ? columns.filter(({ id }) => besideAnother.includes(id)) : columns}
      rowKey={(row) => row.id}
      rowHref={props.hrefOf}
      tools={props.tools}
      empty={
        <EmptyState title="No document here">
          Add blade manuals, standard practices, service letters and directives; work on their models goes by them from
          then on.
        </EmptyState>
      }
    />
  );
}
