import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { type LetterState, letterStateTitles } from '@hubwright/contracts/reminders/shapes';
import { type ReactNode, useState } from 'react';
import { usePages } from '../../api/pages.ts';
import { plainDates } from '../../format/plain-dates.ts';
import { DateText, InstantText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { LetterRecord } from './letter-record.tsx';
import { type Letter, shapeOf, unitsLine } from './reminders.ts';

const columns: readonly Column<Letter>[] = [
  {
    id: 'number',
    header: 'Letter',
    value: ({ number }) => number,
    cell: ({ number }) => <span className="quantity">{number}</span>,
  },
  { id: 'customer', header: 'To', value: ({ customer }) => customer.name },
  { id: 'units', header: 'Tells of', value: ({ units }) => unitsLine(units) },
  {
    id: 'made',
    header: 'Written',
    value: ({ madeOn }) => madeOn,
    cell: ({ madeOn, by }) => (
      <>
        <DateText date={madeOn} />
        <br />
        <span className="small soft">{by}</span>
      </>
    ),
  },
  {
    id: 'way',
    header: 'By',
    value: ({ way }) => way,
    cell: ({ way }) => <span className="quantity">{way}</span>,
  },
  {
    id: 'state',
    header: 'Stands at',
    value: ({ state }) => letterStateTitles[state],
    cell: ({ state, outcome, nextTryAt }) => (
      <>
        <StateMark state={shapeOf[state]} word={letterStateTitles[state]} />
        {outcome ? <p className="small soft">{plainDates(outcome)}</p> : null}
        {state === 'waiting' && nextTryAt ? (
          <p className="small soft">
            next try <InstantText instant={nextTryAt} />
          </p>
        ) : null}
      </>
    ),
  },
];

interface LetterLogProps {
  customerId?: string;
  state?: LetterState | '';
  tools?: ReactNode;
}

/** What was written, to whom, how and what became of it; a letter opens with every step. */
export function LetterLog({ customerId, state, tools }: LetterLogProps) {
  const letters = usePages(reminderOperations.listLetters, {
    ...(customerId ? { customerId } : {}),
    ...(state ? { state } : {}),
  });
  const [opened, setOpened] = useState<string>();
  const letter = letters.rows.find(({ id }) => id === opened);
  return (
    <PagesFrame of={letters}>
      <DataTable
        caption="Letters"
        rows={letters.rows}
        columns={columns}
        rowKey={({ id }) => id}
        onOpen={({ id }) => setOpened(id)}
        tools={tools}
        empty={<EmptyState title="No letter yet">Letters stand here from the moment they are written.</EmptyState>}
      />
      {letter ? <LetterRecord key={letter.version} letter={letter} onClose={() => setOpened(undefined)} /> : null}
    </PagesFrame>
  );
}
