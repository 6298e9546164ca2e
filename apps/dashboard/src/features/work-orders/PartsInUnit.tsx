import type { ReactNode } from 'react';
import { Hours } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { WorkOrder } from './work-orders.ts';

export type PartInUnit = WorkOrder['parts'][number];

function SerialOf({ part, confirm }: { part: PartInUnit; confirm: (part: PartInUnit) => ReactNode }) {
  if (part.serial !== null) {
    return (
      <Link href={`/units/${part.id}`} className="code">
        {part.serial}
      </Link>
    );
  }
  return (
    <span className="row">
      <StateMark state="hold" word="not readable yet" />
      {confirm(part)}
    </span>
  );
}

function columnsWith(confirm: (part: PartInUnit) => ReactNode): readonly Column<PartInUnit>[] {
  return [
    { id: 'position', header: 'Position', value: (part) => part.position },
    { id: 'kind', header: 'Part', value: (part) => part.kind },
    {
      id: 'number',
      header: 'Part number',
      value: (part) => part.partNumber,
      cell: (part) => <span className="code">{part.partNumber}</span>,
    },
    { id: 'maker', header: 'Maker', value: (part) => part.maker },
    {
      id: 'serial',
      header: 'Serial',
      value: (part) => part.serial ?? '',
      cell: (part) => <SerialOf part={part} confirm={confirm} />,
    },
    {
      id: 'new',
      header: 'Since new',
      value: (part) => (typeof part.times?.sinceNewTenths === 'number' ? part.times.sinceNewTenths / 10 : 'unknown'),
      cell: (part) => <Hours tenths={part.times?.sinceNewTenths ?? 'unknown'} />,
      isNumber: true,
    },
    {
      id: 'overhaul',
      header: 'Since overhaul',
      value: (part) =>
        typeof part.times?.sinceOverhaulTenths === 'number' ? part.times.sinceOverhaulTenths / 10 : 'unknown',
      cell: (part) => <Hours tenths={part.times?.sinceOverhaulTenths ?? 'unknown'} />,
      isNumber: true,
    },
  ];
}

/** The unit's parts as they sit now, with times of their own. */
export function PartsInUnit({ order, confirm }: { order: WorkOrder; confirm: (part: PartInUnit) => ReactNode }) {
  return (
    <DataTable
      caption={`Parts of ${order.number}`}
      rows={order.parts}
      columns={columnsWith(confirm)}
      rowKey={(part) => part.id}
      empty={<EmptyState title="One piece">This unit has no parts with serials of their own on record.</EmptyState>}
    />
  );
}
