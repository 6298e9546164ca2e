import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Movement } from './lots.ts';

function standing(row: Movement): string {
  if (row.reversedById) return 'undone';
  return row.reversesId ? 'undoes an earlier one' : '';
}

const when: Column<Movement> = {
  id: 'at',
  header: 'When',
  value: (row) => row.at,
  cell: (row) => <InstantText instant={row.at} />,
};
const lot: Column<Movement> = {
  id: 'lot',
  header: 'Lot',
  value: (row) => row.lotCode,
  cell: (row) => <Link href={`/lots/${row.lotId}`}>{row.lotCode}</Link>,
};
const what: readonly Column<Movement>[] = [
  { id: 'quantity', header: 'Pieces', value: (row) => row.quantity, isNumber: true },
  { id: 'from', header: 'From', value: (row) => row.from.title },
  { id: 'to', header: 'To', value: (row) => row.to.title },
  { id: 'position', header: 'For', value: (row) => row.position },
  { id: 'reason', header: 'Why', value: (row) => row.reason },
  { id: 'person', header: 'By', value: (row) => row.person.displayName },
];

function Undoing({ row, onReverse }: { row: Movement; onReverse: MovementTableProps['onReverse'] }) {
  if (standing(row) !== '') return <StateMark state="note" word={standing(row)} />;
  if (!onReverse) return null;
  return (
    <Button
      weight="quiet"
      onPress={() => onReverse(row)}
      aria-label={`Undo ${row.quantity} from ${row.from.title} to ${row.to.title}`}
    >
      Undo
    </Button>
  );
}

function columns({ ofOneLot, onReverse }: MovementTableProps): readonly Column<Movement>[] {
  const undoing: Column<Movement> = {
    id: 'undo',
    header: 'Undoing',
    value: standing,
    canSort: false,
    cell: (row) => <Undoing row={row} onReverse={onReverse} />,
  };
  return [when, ...(ofOneLot ? [] : [lot]), ...what, undoing];
}

export interface MovementTableProps {
  caption: string;
  movements: readonly Movement[];
  ofOneLot?: boolean;
  onReverse?: ((row: Movement) => void) | undefined;
}

/** The ledger behind a number: every piece came from a place and went to a place. */
export function MovementTable(props: MovementTableProps) {
  return (
    <DataTable
      caption={props.caption}
      rows={props.movements}
      columns={columns(props)}
      rowKey={(row) => row.id}
      empty={<EmptyState title="Nothing has moved yet" />}
    />
  );
}
