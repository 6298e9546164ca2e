import { valueOperations } from '@hubwright/contracts/inventory/value-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { behind, type Flow } from './behind.ts';
import type { Part } from './lots.ts';

type Month = Reply<typeof valueOperations.partUsage>['months'][number];

function columnsFor(part: Part): readonly Column<Month>[] {
  const figure = (id: 'issued' | 'returned' | 'received' | 'scrapped' | 'counted', header: string, flow: Flow) => ({
    id,
    header,
    value: (row: Month) => row[id],
    cell: (row: Month) =>
      row[id] === 0 ? (
        <span className="soft">0</span>
      ) : (
        <Link href={behind({ part: part.number, partId: part.id, flow, since: row.since, before: row.before })}>
          {String(row[id])}
        </Link>
      ),
    isNumber: true,
  });
  return [
    { id: 'month', header: 'Month', value: (row) => row.month },
    figure('issued', 'Issued', 'issues'),
    figure('returned', 'Came back', 'issues'),
    figure('received', 'Received', 'receipts'),
    figure('scrapped', 'Scrapped', 'scrap'),
    figure('counted', 'By counts', 'counts'),
  ];
}

/** What was used of a part, month by month; each number leads to its movements. */
export function UsageTable({ part }: { part: Part }) {
  const months = useQuery(queryFor(valueOperations.partUsage, { partId: part.id })).data?.months ?? [];
  return (
    <DataTable
      caption={`Use of ${part.number} by month`}
      rows={months}
      columns={columnsFor(part)}
      rowKey={(row) => row.month}
      empty={<EmptyState title="Nothing has moved yet" />}
    />
  );
}
