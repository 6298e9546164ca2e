import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { Fetch } from './pull-list.ts';

const what: readonly Column<Fetch>[] = [
  { id: 'bin', header: 'Bin', value: (row) => row.bin, cell: (row) => <strong className="code">{row.bin}</strong> },
  {
    id: 'lot',
    header: 'Lot',
    value: (row) => row.lotCode,
    cell: (row) => <span className="code">{row.lotCode}</span>,
  },
  {
    id: 'part',
    header: 'Part',
    value: (row) => `${row.line.part.number} ${row.line.part.description}`,
    cell: (row) => (
      <>
        <span className="code">{row.line.part.number}</span> <span className="soft">{row.line.part.description}</span>
      </>
    ),
  },
  { id: 'position', header: 'For', value: (row) => row.line.position },
  { id: 'quantity', header: 'Pull', value: (row) => row.quantity, isNumber: true },
  {
    id: 'expires',
    header: 'First day of no use',
    value: (row) => row.expiresOn,
    cell: (row) => (row.expiresOn ? <DateText date={row.expiresOn} /> : <span className="soft">keeps</span>),
  },
];

function columns(onRelease: ((fetch: Fetch) => void) | undefined): readonly Column<Fetch>[] {
  if (!onRelease) return what;
  const release: Column<Fetch> = {
    id: 'release',
    header: 'Promise',
    value: () => '',
    canSort: false,
    cell: (row) => (
      <Button weight="quiet" onPress={() => onRelease(row)} aria-label={`Give free ${row.lotCode}`}>
        Give free
      </Button>
    ),
  };
  return [...what, release];
}

/** What to fetch in the order of the walk: one scan a line. */
export function PullTable(props: {
  kitCode: string;
  fetches: readonly Fetch[];
  onRelease?: ((fetch: Fetch) => void) | undefined;
}) {
  return (
    <DataTable
      caption={`Pull list of ${props.kitCode}`}
      rows={props.fetches}
      columns={columns(props.onRelease)}
      rowKey={(row) => row.key}
      empty={
        <EmptyState title="Nothing is promised to this kit that is still to be pulled">
          Promise what the shelf can give, or scan a lot to put it into the tray straight away.
        </EmptyState>
      }
    />
  );
}
