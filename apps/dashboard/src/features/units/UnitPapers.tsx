import type { Reply } from '@hubwright/contracts/operation';
import { unitHistoryOperations } from '@hubwright/contracts/units/unit-history-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { DateText, InstantText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

type Papers = Reply<typeof unitHistoryOperations.unitPapers>;
type Release = Papers['releases'][number];
type Worked = Papers['documents'][number];
type Photo = Papers['papers'][number];

function Order({ of }: { of: Release['workOrder'] }) {
  return (
    <Link href={`/work-orders/${of.id}`}>
      <span className="code">{of.number}</span>
    </Link>
  );
}

const releaseColumns: readonly Column<Release>[] = [
  {
    id: 'number',
    header: 'Release',
    value: (row) => row.number,
    cell: (row) => (
      <a href={`/api/releases/${row.id}/pdf`} target="_blank" rel="noreferrer">
        <span className="code">{row.number}</span>
      </a>
    ),
  },
  {
    id: 'on',
    header: 'On',
    value: (row) => row.releasedAt,
    cell: (row) => <InstantText instant={row.releasedAt} />,
  },
  { id: 'word', header: 'Word', value: (row) => row.word },
  {
    id: 'order',
    header: 'Work order',
    value: (row) => row.workOrder.number,
    cell: (row) => <Order of={row.workOrder} />,
  },
  {
    id: 'stands',
    header: 'Stands',
    value: (row) => (row.supersededById === null ? 'yes' : 'corrected by a newer one'),
    cell: (row) =>
      row.supersededById === null ? (
        <StateMark state="passed" word="stands" />
      ) : (
        <StateMark state="open" word="corrected by a newer one" />
      ),
  },
];

const documentColumns: readonly Column<Worked>[] = [
  {
    id: 'number',
    header: 'Document',
    value: (row) => row.number,
    cell: (row) => <span className="code">{row.number}</span>,
  },
  { id: 'title', header: 'Title', value: (row) => row.title },
  { id: 'issue', header: 'Issue', value: (row) => row.issue },
  { id: 'of', header: 'Of', value: (row) => row.issuedOn, cell: (row) => <DateText date={row.issuedOn} /> },
  {
    id: 'order',
    header: 'Worked to on',
    value: (row) => row.workOrder.number,
    cell: (row) => <Order of={row.workOrder} />,
  },
];

const photoColumns: readonly Column<Photo>[] = [
  {
    id: 'title',
    header: 'Photo or paper',
    value: (row) => row.title,
    cell: (row) => (
      <a href={`/api/photos/${row.id}/file`} target="_blank" rel="noreferrer">
        {row.title}
      </a>
    ),
  },
  { id: 'added', header: 'Added', value: (row) => row.addedAt, cell: (row) => <InstantText instant={row.addedAt} /> },
  {
    id: 'order',
    header: 'Work order',
    value: (row) => row.workOrder.number,
    cell: (row) => <Order of={row.workOrder} />,
  },
  { id: 'counts', header: 'Counts', value: (row) => (row.struckBecause === null ? 'yes' : `no: ${row.struckBecause}`) },
];

/** What of a unit is on paper: its releases, the documents it was worked to, and what was photographed or added. */
export function UnitPapers({ itemId }: { itemId: string }) {
  const { releases, documents, papers } = useSuspenseQuery(queryFor(unitHistoryOperations.unitPapers, { itemId })).data;
  return (
    <>
      <DataTable
        caption="Releases"
        rows={releases}
        columns={releaseColumns}
        rowKey={(row) => row.id}
        empty={
          <EmptyState title="It was never released here">
            A release stands here once an inspector approved a visit for return to service.
          </EmptyState>
        }
      />
      <DataTable
        caption="Documents worked to"
        rows={documents}
        columns={documentColumns}
        rowKey={(row) => `${row.workOrder.id} ${row.kind} ${row.number} ${row.issue}`}
        empty={<EmptyState title="No visit, so no document was worked to" />}
      />
      <DataTable
        caption="Photos and papers"
        rows={papers}
        columns={photoColumns}
        rowKey={(row) => row.id}
        empty={<EmptyState title="No photo or paper was added">They are added on the work order.</EmptyState>}
      />
    </>
  );
}
