import type { ReactNode } from 'react';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { CurrencyMark } from './CurrencyMark.tsx';
import { currentOf, type Manual } from './manuals.ts';

const columns: readonly Column<Manual>[] = [
  {
    id: 'number',
    header: 'Manual',
    value: (manual) => manual.number,
    cell: (manual) => <span className="code">{manual.number}</span>,
  },
  { id: 'title', header: 'Title', value: (manual) => manual.title },
  { id: 'maker', header: 'Maker', value: (manual) => manual.maker },
  { id: 'kind', header: 'Kind', value: (manual) => manual.kind.replaceAll('-', ' ') },
  {
    id: 'current',
    header: 'Current revision',
    value: (manual) => currentOf(manual)?.revision,
    cell: (manual) => currentOf(manual)?.revision ?? <span className="soft">none entered</span>,
  },
  {
    id: 'issued',
    header: 'Issued',
    value: (manual) => currentOf(manual)?.issuedOn,
    cell: (manual) => {
      const current = currentOf(manual);
      return current ? <DateText date={current.issuedOn} /> : null;
    },
  },
  {
    id: 'checked',
    header: 'Currency checked',
    value: (manual) => currentOf(manual)?.currencyCheckedOn,
    cell: (manual) => <CurrencyMark revision={currentOf(manual)} />,
  },
];

/** The manuals the shop holds, each with the revision work goes by. */
export function ManualTable(props: {
  manuals: readonly Manual[];
  hrefOf: (manual: Manual) => string;
  tools: ReactNode;
  /** Beside an opened manual there is room for less. */
  isNarrow: boolean;
}) {
  const kept = ['number', 'title', 'current', 'checked'];
  return (
    <DataTable
      caption="Manuals"
      rows={props.manuals}
      columns={props.isNarrow ? columns.filter(({ id }) => kept.includes(id)) : columns}
      rowKey={(manual) => manual.id}
      rowHref={props.hrefOf}
      tools={props.tools}
      empty={
        <EmptyState title="The shop holds no manual yet">
          Add the manual first, then the models it covers, then the revision you hold.
        </EmptyState>
      }
    />
  );
}
