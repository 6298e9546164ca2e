import { formatHours, formatWhole } from '../../format/numbers.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { RevisionModel } from './manuals.ts';

type Limit = RevisionModel['lifeLimits'][number];

const none = 'not limited';

const columns: readonly Column<Limit>[] = [
  {
    id: 'part',
    header: 'Part',
    value: (limit) => limit.partNumber,
    cell: (limit) => <span className="code">{limit.partNumber}</span>,
  },
  {
    id: 'hours',
    header: 'Hours since new',
    value: (limit) => (limit.hoursTenths === undefined ? none : formatHours(limit.hoursTenths)),
    isNumber: true,
  },
  {
    id: 'cycles',
    header: 'Cycles since new',
    value: (limit) => (limit.cycles === undefined ? none : formatWhole(limit.cycles)),
    isNumber: true,
  },
  {
    id: 'overhauls',
    header: 'Overhauls since new',
    value: (limit) => (limit.overhauls === undefined ? none : formatWhole(limit.overhauls)),
    isNumber: true,
  },
];

/** Parts that are retired at a total since new: whichever limit comes first. */
export function LifeLimitTable({ designation, limits }: { designation: string; limits: readonly Limit[] }) {
  return (
    <DataTable
      caption={`Life limits of ${designation}`}
      rows={limits}
      columns={columns}
      rowKey={(limit) => limit.partNumber}
      empty={<EmptyState title="This revision limits no part of this model in life" />}
    />
  );
}
