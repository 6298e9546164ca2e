import { heldCauseTitles } from '@hubwright/contracts/purchasing/held-operations';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Held } from './held.ts';

const what: readonly Column<Held>[] = [
  {
    id: 'number',
    header: 'Held',
    value: (row) => row.number,
    cell: (row) => <span className="code">{row.number}</span>,
  },
  { id: 'what', header: 'What came', value: (row) => `${row.quantity} × ${row.what}` },
  {
    id: 'cause',
    header: 'Why it is not taken',
    value: (row) => heldCauseTitles[row.cause],
    cell: (row) => <StateMark state="hold" word={heldCauseTitles[row.cause]} />,
  },
  { id: 'order', header: 'Order', value: (row) => row.order?.number ?? 'none' },
  { id: 'supplier', header: 'Supplier', value: (row) => row.supplier?.name ?? 'not known' },
  { id: 'since', header: 'Since', value: (row) => row.heldAt, cell: (row) => <InstantText instant={row.heldAt} /> },
];

/** What came and is not the shop's: it waits here until it goes back. */
export function HeldTable({ rows, onReturn }: { rows: readonly Held[]; onReturn?: ((row: Held) => void) | undefined }) {
  const next: Column<Held> = {
    id: 'act',
    header: 'Next',
    value: () => '',
    canSort: false,
    cell: (row) => (
      <Button onPress={() => onReturn?.(row)} aria-label={`Send back ${row.number}`}>
        Send back
      </Button>
    ),
  };
  return (
    <DataTable
      caption="Held deliveries"
      rows={rows}
      columns={onReturn ? [...what, next] : what}
      rowKey={(row) => row.id}
      empty={<EmptyState title="Nothing is held">Wrong parts and surplus that are not taken wait here.</EmptyState>}
    />
  );
}
