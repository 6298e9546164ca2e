import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { countOf } from '../../format/numbers.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { LetterDialog } from './letter-dialog.tsx';
import { type DueLetter, dueLettersQuery, unitsLine } from './reminders.ts';
import { SendDialog } from './send-letters.tsx';

function Way({ letter: { heldBecause, ways, to } }: { letter: DueLetter }) {
  if (heldBecause !== null) return <StateMark state="hold" word={heldBecause} />;
  const canMail = ways.includes('e-mail');
  return (
    <>
      {canMail ? 'e-mail' : 'paper only'}
      <br />
      <span className="small soft">{canMail ? to.email : to.address || 'no address on record'}</span>
    </>
  );
}

function columnsFor(onLook: (letter: DueLetter) => void): readonly Column<DueLetter>[] {
  return [
    {
      id: 'customer',
      header: 'Customer',
      value: ({ customer }) => customer.name,
      cell: ({ customer }) => <Link href={`/customers/${customer.id}`}>{customer.name}</Link>,
    },
    { id: 'units', header: 'Tells of', value: ({ units }) => unitsLine(units) },
    {
      id: 'first',
      header: 'First likely date',
      value: ({ units }) => units[0]?.dueOn ?? '',
      cell: ({ units }) => (units[0] ? <DateText date={units[0].dueOn} /> : ''),
    },
    {
      id: 'way',
      header: 'Goes by',
      value: ({ heldBecause, ways }) => heldBecause ?? ways.join(' or '),
      cell: (letter) => <Way letter={letter} />,
    },
    {
      id: 'look',
      header: 'Letter',
      value: () => '',
      canSort: false,
      cell: (letter) => <Button onPress={() => onLook(letter)}>Read it</Button>,
    },
  ];
}

/** Letters that are due today: read each, then send them all, or one. */
export function DueLetters() {
  const { rows, next, printOnlyBecause } = useSuspenseQuery(dueLettersQuery).data;
  const maySend = useMay(reminderOperations.sendReminders);
  const [look, setLook] = useState<DueLetter>();
  const [sending, setSending] = useState<readonly DueLetter[]>();
  const open = rows.filter(({ heldBecause }) => heldBecause === null);
  return (
    <>
      {printOnlyBecause === null ? null : <p role="note">{printOnlyBecause}</p>}
      <DataTable
        caption="Letters due"
        rows={rows}
        columns={columnsFor(setLook)}
        rowKey={({ customer }) => customer.id}
        tools={
          maySend && open.length > 0 ? (
            <Button weight="next" onPress={() => setSending(open)}>
              Write {countOf(open.length, 'letter')}
            </Button>
          ) : null
        }
        empty={
          <EmptyState title="No letter is due">
            A letter is due when a unit comes to one of the shop’s intervals before its likely date, once for each
            interval.
          </EmptyState>
        }
      />
      {next === null ? null : <p className="soft">More are due; they stand here once these are written.</p>}
      {look ? (
        <LetterDialog
          letter={look}
          onSend={maySend ? () => setSending([look]) : undefined}
          onClose={() => setLook(undefined)}
        />
      ) : null}
      {sending ? (
        <SendDialog
          letters={sending}
          onClose={() => {
            setSending(undefined);
            setLook(undefined);
          }}
        />
      ) : null}
    </>
  );
}
