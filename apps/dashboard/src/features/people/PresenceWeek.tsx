import { csvText } from '@hubwright/rules/csv';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useToday } from '../../format/use-today.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { saveFile } from '../../ui/csv.ts';
import { Dialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { EnterAbsenceForm } from './enter-absence.tsx';
import styles from './people.module.css';
import { absenceWords, type Presence, presenceQuery } from './working-time.ts';

type Row = Presence['rows'][number];
type Day = Row['days'][number];

/** In words: the hours, or why not. */
function wordsOf({ from, to, absence, holiday, availableMinutes, plannedMinutes }: Day): string {
  const why = absence ? absenceWords[absence] : (holiday ?? '');
  if (availableMinutes === 0) return plannedMinutes === 0 ? 'free' : why;
  return `${from}–${to}${availableMinutes < plannedMinutes && why ? `, ${why} part of the day` : ''}`;
}

function countsOf(here: number, away: number): string {
  if (here + away === 0) return 'closed';
  return `${here} here${away > 0 ? `, ${away} away` : ''}`;
}

function Cell({ day }: { day: Day }) {
  const words = wordsOf(day);
  if (day.plannedMinutes === 0) return <span className="soft">{words}</span>;
  if (day.availableMinutes === day.plannedMinutes) return <span className={styles.hours}>{words}</span>;
  return <StateMark state={day.availableMinutes === 0 ? 'hold' : 'waiting'} word={words} />;
}

function exported({ days, rows, monday }: Presence) {
  const lines = rows.map((row) => [row.person, ...row.days.map(wordsOf)]);
  saveFile(`who-is-here-${monday}.csv`, csvText(['Person', ...days.map(({ date }) => date)], lines));
}

function Week({ presence, today, onAway }: { presence: Presence; today: string; onAway: (row: Row) => void }) {
  return (
    <section className="table-frame" aria-label="Who is here">
      <table className={styles.week}>
        <caption className="only-heard">People by the days of the week</caption>
        <thead>
          <tr>
            <th scope="col">Person</th>
            {presence.days.map(({ date, here, away, holiday }) => (
              <th key={date} scope="col" aria-current={date === today ? 'date' : undefined}>
                <DateText date={date} />
                <div className="soft small">{holiday ?? countsOf(here, away)}</div>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {presence.rows.map((row) => (
            <tr key={row.personId}>
              <th scope="row">
                <Button weight="quiet" aria-label={`Enter an absence of ${row.person}`} onPress={() => onAway(row)}>
                  {row.person}
                </Button>
              </th>
              {row.days.map((day) => (
                <td key={day.date}>
                  <Cell day={day} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** People by days: who is here, from when to when, and why the others are not. */
export function PresenceWeek({ week, onWeek }: { week: string; onWeek: (monday: string) => void }) {
  const presence = useSuspenseQuery(presenceQuery(week)).data;
  const today = useToday();
  const [away, setAway] = useState<Row>();
  const close = () => setAway(undefined);
  const move = (days: number) => {
    const at = new Date(`${presence.monday}T00:00:00Z`);
    at.setUTCDate(at.getUTCDate() + days);
    onWeek(at.toISOString().slice(0, 10));
  };
  return (
    <div className="stack">
      <div className="row between no-print">
        <div className="row">
          <Button onPress={() => move(-7)}>Week before</Button>
          <Button onPress={() => onWeek('')}>This week</Button>
          <Button onPress={() => move(7)}>Week after</Button>
        </div>
        <Button weight="quiet" onPress={() => exported(presence)}>
          Export CSV
        </Button>
      </div>
      {presence.rows.length === 0 ? (
        <EmptyState title="Nobody works here yet">Add people first.</EmptyState>
      ) : (
        <Week presence={presence} today={today} onAway={setAway} />
      )}
      <Dialog title={`${away?.person ?? ''} is away`} isOpen={away !== undefined} onClose={close}>
        {away ? <EnterAbsenceForm personId={away.personId} on={today} onDone={close} onCancel={close} /> : null}
      </Dialog>
    </div>
  );
}
