import { sourceClassTitles } from '@hubwright/contracts/inventory/operations';
import type { ReactNode } from 'react';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { LotRow } from './lots.ts';
import { lotMarks } from './stock-words.ts';

const columns: readonly Column<LotRow>[] = [
  { id: 'code', header: 'Lot', value: (lot) => lot.code, cell: (lot) => <span className="code">{lot.code}</span> },
  {
    id: 'part',
    header: 'Part',
    value: (lot) => `${lot.part.number} ${lot.part.description}`,
    cell: (lot) => (
      <>
        <span className="code">{lot.part.number}</span> <span className="soft">{lot.part.description}</span>
      </>
    ),
  },
  {
    id: 'state',
    header: 'State',
    value: (lot) => lotMarks[lot.state].word,
    cell: (lot) => <StateMark {...lotMarks[lot.state]} />,
  },
  { id: 'place', header: 'Where', value: (lot) => lot.place },
  { id: 'onHand', header: 'There', value: (lot) => lot.onHand, isNumber: true },
  { id: 'reserved', header: 'Promised', value: (lot) => lot.reserved, isNumber: true },
  {
    id: 'expires',
    header: 'First day of no use',
    value: (lot) => lot.expiresOn,
    cell: (lot) => (lot.expiresOn ? <DateText date={lot.expiresOn} /> : <span className="soft">keeps</span>),
  },
  { id: 'source', header: 'Source', value: (lot) => sourceClassTitles[lot.sourceClass] },
  {
    id: 'certificate',
    header: 'Certificate',
    value: (lot) => lot.certificate,
    cell: (lot) =>
      lot.certificate ? <span className="code">{lot.certificate}</span> : <span className="soft">none</span>,
  },
];

/** Lots with what is on hand. */
export function LotTable(props: {
  caption: string;
  lots: readonly LotRow[];
  tools?: ReactNode;
  empty: ReactNode;
  only?: readonly string[];
}) {
  return (
    <DataTable
      caption={props.caption}
      rows={props.lots}
      columns={props.only ? columns.filter(({ id }) => props.only?.includes(id)) : columns}
      rowKey={(lot) => lot.id}
      rowHref={(lot) => `/lots/${lot.id}`}
      tools={props.tools}
      empty={props.empty}
    />
  );
}
