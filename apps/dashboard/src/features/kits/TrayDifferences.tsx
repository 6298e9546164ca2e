import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type Difference, trayDifferences } from './differences.ts';
import type { Kit } from './kit-detail.ts';
import { ReturnDialog } from './return-from-tray.tsx';

const marks = { 'bring back': 'hold', pull: 'short' } as const;

function columnsFor(onReturn: ((row: Difference) => void) | undefined): readonly Column<Difference>[] {
  return [
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
    { id: 'lot', header: 'Lot', value: (row) => row.lot?.lotCode ?? '' },
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

/** The list has changed under the tray: what to bring back and what to pull instead. Nothing while the tray holds no more than it should. */
export function TrayDifferences({ kit, mayMove }: { kit: Kit; mayMove: boolean }) {
  const [asked, setAsked] = useState<Difference>();
  const rows = trayDifferences(kit);
  if (rows.length === 0) return null;
  return (
    <section className="sheet stack">
      <h2>The list asks for something else than lies in the tray</h2>
      <DataTable
        caption={`Differences of ${kit.code}`}
        rows={rows}
        columns={columnsFor(mayMove ? setAsked : undefined)}
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
    </section>
  );
}
