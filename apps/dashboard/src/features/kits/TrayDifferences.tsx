import { useState } from 'react';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Difference } from './differences.ts';
import type { Kit } from './kit-detail.ts';
import { standingMark } from './kit-words.ts';
import { ReturnDialog } from './return-from-tray.tsx';

const marks = { 'bring back': 'hold', pull: 'short' } as const;

/** The lot to bring back, or the promised ones to fetch; how the line stands where none is promised. */
function whereOf({ lot, line }: Difference): string {
  if (lot) return lot.lotCode;
  const promised = line.reservations.map(({ quantity, lotCode, bin }) => `${quantity} of ${lotCode} in ${bin}`);
  return promised.length > 0 ? promised.join(', ') : standingMark(line).word;
}

const what: readonly Column<Difference>[] = [
  {
    id: 'what',
    header: 'What to do',
    value: (row) => row.what,
    cell: (row) => <StateMark state={marks[row.what]} word={row.what} />,
  },
  { id: 'quantity', header: 'Pieces', value: (row) => row.quantity, isNumber: true },
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
  { id: 'lot', header: 'Lot', value: whereOf },
  {
    id: 'since',
    header: 'Asked for since',
    value: (row) => row.line.askedLaterAt,
    cell: (row) =>
      row.line.askedLaterAt && row.what === 'pull' ? <InstantText instant={row.line.askedLaterAt} /> : null,
  },
];

function columnsFor(onReturn: ((row: Difference) => void) | undefined): readonly Column<Difference>[] {
  return [
    ...what,
    {
      id: 'do',
      header: 'Tray',
      value: () => '',
      canSort: false,
      cell: (row) =>
        row.lot && onReturn ? (
          <Button onPress={() => onReturn(row)} aria-label={`Bring back ${row.quantity} of ${row.lot.lotCode}`}>
            Bring back
          </Button>
        ) : null,
    },
  ];
}

/** The list has changed under the tray: what to bring back and what to pull besides. */
export function TrayDifferences(props: { kit: Kit; rows: readonly Difference[]; mayMove: boolean }) {
  const { kit, rows } = props;
  const [asked, setAsked] = useState<Difference>();
  return (
    <>
      <DataTable
        caption={`Differences of ${kit.code}`}
        rows={rows}
        columns={columnsFor(props.mayMove ? setAsked : undefined)}
        rowKey={(row) => row.key}
        empty={null}
      />
      {asked?.lot ? (
        <ReturnDialog
          kitId={kit.id}
          lot={{ ...asked.lot, quantity: asked.quantity }}
          onClose={() => setAsked(undefined)}
        />
      ) : null}
    </>
  );
}
