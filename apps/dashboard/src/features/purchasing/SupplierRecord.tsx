import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { type RowOf, usePages } from '../../api/pages.ts';
import { DateText, Quantity } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Supplier } from './suppliers.ts';

type Delivery = RowOf<typeof approvalOperations.supplierDeliveries>;

const percent = (share: number) => `${Math.round(share * 100)} %`;
const days = (value: number) => <Quantity amount={String(Math.round(value * 10) / 10)} unit="days" />;

/** How long this supplier takes and how often it keeps its word, learnt from what came. */
function Learnt({ record }: { record: NonNullable<Supplier['record']> }) {
  return (
    <dl className="facts">
      <div>
        <dt>Half took no longer than</dt>
        <dd>{days(record.median)}</dd>
      </div>
      <div>
        <dt>Four in five</dt>
        <dd>{days(record.fourInFive)}</dd>
      </div>
      <div>
        <dt>Nineteen in twenty</dt>
        <dd>{days(record.nineteenInTwenty)}</dd>
      </div>
      <div>
        <dt>By the day first promised</dt>
        <dd>
          {record.onTime} of {record.count}: between {percent(record.onTimeLow)} and {percent(record.onTimeHigh)} of all
          (95 % interval)
        </dd>
      </div>
      <div>
        <dt>Order-by dates</dt>
        <dd>
          {record.isEnough
            ? 'go by what four deliveries in five kept'
            : `go by the agreed days: ${record.count} of the 10 deliveries asked for are on record`}
        </dd>
      </div>
    </dl>
  );
}

const columns: readonly Column<Delivery>[] = [
  {
    id: 'came',
    header: 'Came',
    value: (row) => row.cameOn,
    cell: (row) => <DateText date={row.cameOn} />,
  },
  {
    id: 'part',
    header: 'Part',
    value: (row) => row.part.number,
    cell: (row) => <Link href={`/parts/${row.part.id}`}>{row.part.number}</Link>,
  },
  {
    id: 'order',
    header: 'Order',
    value: (row) => row.orderNumber,
    cell: (row) => <Link href={`/orders/${row.orderId}`}>{row.orderNumber}</Link>,
  },
  {
    id: 'lot',
    header: 'Lot',
    value: (row) => row.lotCode,
    cell: (row) => <Link href={`/lots/${row.lotId}`}>{row.lotCode}</Link>,
  },
  { id: 'days', header: 'Days', value: (row) => row.days, isNumber: true },
  {
    id: 'promised',
    header: 'First promised',
    value: (row) => row.promisedOn,
    cell: (row) => <DateText date={row.promisedOn} />,
  },
  {
    id: 'kept',
    header: 'Kept',
    value: (row) => (row.onTime ? 'in time' : 'late'),
    cell: (row) => (row.onTime ? <StateMark state="passed" word="in time" /> : <StateMark state="stop" word="late" />),
  },
];

export function SupplierRecord({ supplier }: { supplier: Supplier }) {
  const deliveries = usePages(approvalOperations.supplierDeliveries, { supplierId: supplier.id });
  return (
    <section className="sheet stack">
      <h2>How it delivers</h2>
      {supplier.record ? <Learnt record={supplier.record} /> : null}
      <PagesFrame of={deliveries}>
        <DataTable
          caption={`Deliveries of ${supplier.name}`}
          rows={deliveries.rows}
          columns={columns}
          rowKey={(row) => row.lotId}
          empty={
            <EmptyState title="Nothing has come yet">
              The first box received against an order begins the record.
            </EmptyState>
          }
        />
      </PagesFrame>
    </section>
  );
}
