import type { ReactNode } from 'react';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import type { Offer } from './suppliers.ts';

const prices = ({ breaks }: Offer) =>
  breaks.map(({ from, unitPrice }, at) => (at === 0 ? unitPrice : `${unitPrice} from ${from}`)).join(', ');

function columns(onChange?: (offer: Offer) => void): readonly Column<Offer>[] {
  const change: Column<Offer> = {
    id: 'act',
    header: 'Next',
    value: () => '',
    canSort: false,
    cell: (row) => (
      <Button weight="quiet" onPress={() => onChange?.(row)} aria-label={`Change ${row.part.number}`}>
        Change
      </Button>
    ),
  };
  return [
    {
      id: 'part',
      header: 'Part',
      value: (row) => row.part.number,
      cell: (row) => <Link href={`/parts/${row.part.id}`}>{row.part.number}</Link>,
    },
    { id: 'preference', header: 'Asked as no.', value: (row) => row.preference, isNumber: true },
    { id: 'pack', header: 'Pack', value: (row) => row.packSize, isNumber: true },
    { id: 'least', header: 'At least', value: (row) => row.minimum, isNumber: true },
    { id: 'days', header: 'Agreed days', value: (row) => row.leadTimeDays, isNumber: true },
    { id: 'prices', header: 'Price each', value: prices },
    ...(onChange ? [change] : []),
  ];
}

/** How one supplier sells parts. */
export function OfferTable(props: {
  caption: string;
  rows: readonly Offer[];
  tools: ReactNode;
  onChange?: ((offer: Offer) => void) | undefined;
}) {
  return (
    <DataTable
      caption={props.caption}
      rows={props.rows}
      columns={columns(props.onChange)}
      rowKey={(row) => row.id}
      tools={props.tools}
      empty={
        <EmptyState title="No offer is on record">
          Until one is, packs, price and lead time are those of the part number.
        </EmptyState>
      }
    />
  );
}
