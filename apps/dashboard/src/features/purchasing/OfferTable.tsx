import type { ReactNode } from 'react';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Offer } from './suppliers.ts';

const prices = ({ breaks }: Offer) =>
  breaks.map(({ from, unitPrice }, at) => (at === 0 ? unitPrice : `${unitPrice} from ${from}`)).join(', ');

interface Acting {
  readonly onChange?: ((offer: Offer) => void) | undefined;
  /** Says what holds after it. */
  readonly onFollow?: ((offer: Offer) => void) | undefined;
}

/** From when to when its prices hold; what does not hold today is left out of what to buy. */
function Holds({ row }: { row: Offer }) {
  const { validFrom, validUntil, holds } = row;
  return (
    <>
      {validFrom ? (
        <>
          from <DateText date={validFrom} />{' '}
        </>
      ) : null}
      {validUntil ? (
        <>
          until <DateText date={validUntil} />
        </>
      ) : null}
      {validFrom || validUntil ? null : <span className="soft">always</span>}
      {holds ? null : <StateMark state="waiting" word="does not hold today" />}
    </>
  );
}

const what: readonly Column<Offer>[] = [
  {
    id: 'part',
    header: 'Part',
    value: (row) => row.part.number,
    cell: (row) => <Link href={`/parts/${row.part.id}`}>{row.part.number}</Link>,
  },
  {
    id: 'theirs',
    header: 'Their number',
    value: (row) => row.supplierPartNumber,
    cell: (row) => <span className="code">{row.supplierPartNumber}</span>,
  },
  { id: 'preference', header: 'Asked as no.', value: (row) => row.preference, isNumber: true },
  { id: 'pack', header: 'Pack', value: (row) => row.packSize, isNumber: true },
  { id: 'least', header: 'At least', value: (row) => row.minimum, isNumber: true },
  { id: 'days', header: 'Agreed days', value: (row) => row.leadTimeDays, isNumber: true },
  { id: 'prices', header: 'Price each', value: prices },
  {
    id: 'holds',
    header: 'Holds',
    value: (row) => [row.validFrom ?? '', row.validUntil ?? ''].join(' to '),
    cell: (row) => <Holds row={row} />,
  },
];

function columns({ onChange, onFollow }: Acting): readonly Column<Offer>[] {
  const change: Column<Offer> = {
    id: 'act',
    header: 'Next',
    value: () => '',
    canSort: false,
    cell: (row) => (
      <span className="row tight">
        <Button weight="quiet" onPress={() => onChange?.(row)} aria-label={`Change ${row.part.number}`}>
          Change
        </Button>
        <Button
          weight="quiet"
          onPress={() => onFollow?.(row)}
          aria-label={`Prices of ${row.part.number} from a later day`}
        >
          From a later day
        </Button>
      </span>
    ),
  };
  return onChange ? [...what, change] : what;
}

/** How one supplier sells parts. */
export function OfferTable(props: Acting & { caption: string; rows: readonly Offer[]; tools: ReactNode }) {
  return (
    <DataTable
      caption={props.caption}
      rows={props.rows}
      columns={columns(props)}
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
