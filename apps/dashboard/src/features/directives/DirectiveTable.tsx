import type { ReactNode } from 'react';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { calledOf, type DirectiveRow, directiveKindTitles, lineWords, oftenWords } from './directives.ts';

const columns: readonly Column<DirectiveRow>[] = [
  {
    id: 'number',
    header: 'Directive',
    value: calledOf,
    cell: (row) => <span className="code">{calledOf(row)}</span>,
  },
  { id: 'title', header: 'Title', value: (row) => row.title },
  { id: 'kind', header: 'Kind', value: (row) => directiveKindTitles[row.kind] },
  { id: 'issuer', header: 'Issued by', value: (row) => row.issuer },
  { id: 'binding', header: 'Binding', value: (row) => row.binding },
  { id: 'often', header: 'How often', value: oftenWords },
  { id: 'applies', header: 'Applies to', value: (row) => row.lines.map(lineWords).join('; ') },
  {
    id: 'effective',
    header: 'In force from',
    value: (row) => row.effectiveOn,
    cell: (row) => <DateText date={row.effectiveOn} />,
  },
];
const besideAnother = ['number', 'title', 'often'];

/** Airworthiness directives and service bulletins on record. */
export function DirectiveTable(props: {
  directives: readonly DirectiveRow[];
  hrefOf: (row: DirectiveRow) => string;
  tools: ReactNode;
  isNarrow: boolean;
}) {
  return (
    <DataTable
      caption="Directives and bulletins"
      rows={props.directives}
      columns={props.isNarrow ? columns.filter(({ id }) => besideAnother.includes(id)) : columns}
      rowKey={(row) => row.id}
      rowHref={props.hrefOf}
      tools={props.tools}
      empty={
        <EmptyState title="No directive here">
          An inspector puts airworthiness directives and service bulletins on record; units they concern are held,
          quoted and listed by them from then on.
        </EmptyState>
      }
    />
  );
}
