import type { ReactNode } from 'react';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { Part, PartStock } from './lots.ts';
import { classWords } from './stock-words.ts';

function columns(stock: ReadonlyMap<string, PartStock>): readonly Column<Part>[] {
  const of = (part: Part) => stock.get(part.id);
  return [
    {
      id: 'number',
      header: 'Part number',
      value: (part) => part.number,
      cell: (part) => <span className="code">{part.number}</span>,
    },
    { id: 'description', header: 'Description', value: (part) => part.description },
    { id: 'class', header: 'Class', value: (part) => classWords[part.class] },
    { id: 'have', header: 'Have', value: (part) => of(part)?.have, isNumber: true },
    { id: 'reserved', header: 'Promised', value: (part) => of(part)?.reserved, isNumber: true },
    { id: 'quarantine', header: 'Quarantine', value: (part) => of(part)?.inQuarantine, isNumber: true },
    { id: 'onOrder', header: 'On order', value: (part) => of(part)?.onOrder, isNumber: true },
    {
      id: 'bin',
      header: 'Home bin',
      value: (part) => part.homeBin,
      cell: (part) => <span className="code">{part.homeBin}</span>,
    },
    {
      id: 'alternates',
      header: 'May stand in',
      value: (part) => part.alternates.map((each) => each.number).join(', '),
    },
    { id: 'lead', header: 'Lead, days', value: (part) => part.leadTimeDays, isNumber: true },
  ];
}

/** Part numbers with what there is of each. */
export function PartTable(props: { parts: readonly Part[]; stock: ReadonlyMap<string, PartStock>; tools: ReactNode }) {
  return (
    <DataTable
      caption="Part numbers"
      rows={props.parts}
      columns={columns(props.stock)}
      rowKey={(part) => part.id}
      rowHref={(part) => `/parts/${part.id}`}
      tools={props.tools}
      empty={<EmptyState title="No part number fits">Search for any piece of its number or description.</EmptyState>}
    />
  );
}
