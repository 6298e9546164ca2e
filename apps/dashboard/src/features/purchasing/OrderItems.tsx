import { DueText, Price } from '../../format/values.tsx';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Order, OrderItem } from './orders.ts';

function Came({ item }: { item: OrderItem }) {
  return item.lots.map((lot, place) => (
    <span key={lot.id}>
      {place === 0 ? '' : ', '}
      <Link href={`/lots/${lot.id}`}>{lot.code}</Link>
    </span>
  ));
}

const what: readonly Column<OrderItem>[] = [
  {
    id: 'part',
    header: 'Part',
    value: (item) => item.part.number,
    cell: (item) => (
      <>
        <Link href={`/parts/${item.part.id}`}>{item.part.number}</Link>{' '}
        <span className="soft">{item.part.description}</span>
      </>
    ),
  },
  {
    id: 'theirs',
    header: 'Their number',
    value: (item) => item.supplierPartNumber,
    cell: (item) => <span className="code">{item.supplierPartNumber}</span>,
  },
  { id: 'ordered', header: 'Ordered', value: (item) => item.quantity, isNumber: true },
  {
    id: 'received',
    header: 'Has come',
    value: (item) => item.received,
    isNumber: true,
    cell: (item) => (
      <Link href={`/movements?orderLineId=${item.id}&flow=receipts&part=${item.part.number}`}>{item.received}</Link>
    ),
  },
  {
    id: 'open',
    header: 'Still to come',
    value: (item) => item.open,
    isNumber: true,
    cell: (item) => (item.open === 0 ? <StateMark state="passed" word="all here" /> : item.open),
  },
  {
    id: 'due',
    header: 'Comes',
    value: (item) => item.expectedOn,
    cell: (item) => (
      <span className="row tight">
        {item.late ? <StateMark state="waiting" word="late" /> : null}
        <span>
          <DueText date={item.expectedOn} />{' '}
          <span className="small soft">
            {item.confirmedOn ? `confirmed for ${item.confirmedQuantity}` : 'not confirmed'}
          </span>
        </span>
      </span>
    ),
  },
  {
    id: 'price',
    header: 'Unit price',
    value: (item) => item.unitPrice,
    isNumber: true,
    cell: (item) => <Price each={item.unitPrice} />,
  },
  {
    id: 'lots',
    header: 'Lots',
    value: (item) => item.lots.map((lot) => lot.code).join(', '),
    cell: (item) => <Came item={item} />,
  },
];

function columns(onChange?: (item: OrderItem) => void): readonly Column<OrderItem>[] {
  if (!onChange) return what;
  const next: Column<OrderItem> = {
    id: 'act',
    header: 'Next',
    value: () => '',
    canSort: false,
    cell: (item) =>
      item.open === 0 ? null : (
        <span className="row tight">
          <LinkButton href={`/receiving?line=${item.id}`}>Receive</LinkButton>
          <Button weight="quiet" onPress={() => onChange(item)} aria-label={`Change ${item.part.number}`}>
            Change
          </Button>
        </span>
      ),
  };
  return [...what, next];
}

/** The lines of one order: what was ordered, what has come, what is late. */
export function OrderItems({ order, onChange }: { order: Order; onChange?: ((item: OrderItem) => void) | undefined }) {
  return (
    <DataTable
      caption={`Lines of ${order.number}`}
      rows={order.items}
      columns={columns(order.state === 'ordered' ? onChange : undefined)}
      rowKey={(item) => item.id}
      empty={null}
    />
  );
}
