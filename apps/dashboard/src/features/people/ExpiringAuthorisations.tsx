import { useSuspenseQuery } from '@tanstack/react-query';
import { dueWords } from '../../format/dates.ts';
import { processWords } from '../../format/process-words.ts';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type Authorisation, endsSoon, isInForce, peopleQuery } from './list-people.ts';

interface Ending {
  readonly person: string;
  readonly held: Authorisation;
}

function columnsOf(today: string): readonly Column<Ending>[] {
  return [
    { id: 'person', header: 'Person', value: (row) => row.person },
    { id: 'process', header: 'May', value: (row) => `${processWords[row.held.process]}, ${row.held.level}` },
    {
      id: 'ends',
      header: 'First day of no use',
      value: (row) => row.held.expiresOn ?? '',
      cell: (row) => (
        <>
          <StateMark
            state={isInForce(row.held, today) ? 'waiting' : 'stop'}
            word={isInForce(row.held, today) ? dueWords(row.held.expiresOn ?? today, today) : 'expired'}
          />{' '}
          <DateText date={row.held.expiresOn ?? today} />
        </>
      ),
    },
  ];
}

/** Authorisations of active people that have expired, or will within so many days, and were not renewed. */
export function ExpiringAuthorisations({ today, withinDays }: { today: string; withinDays: number }) {
  const { rows: people } = useSuspenseQuery(peopleQuery).data;
  const ending = people
    .filter((person) => person.active)
    .flatMap((person) =>
      person.authorisations
        .filter((held) => needsRenewal(held, { all: person.authorisations, today, withinDays }))
        .map((held) => ({ person: person.displayName, held })),
    )
    .sort((a, b) => (a.held.expiresOn ?? '').localeCompare(b.held.expiresOn ?? ''));
  return (
    <DataTable
      caption="Authorisations coming to an end"
      rows={ending}
      columns={columnsOf(today)}
      rowKey={(row) => row.held.id}
      empty={<EmptyState title={`No authorisation ends within ${withinDays} days`} />}
    />
  );
}

/** Ended by its date, not by a decision, and no later one stands in for it. */
function needsRenewal(
  held: Authorisation,
  given: { all: readonly Authorisation[]; today: string; withinDays: number },
): boolean {
  const { all, today, withinDays } = given;
  if (held.revokedOn !== null || held.expiresOn === null) return false;
  if (held.expiresOn > today && !endsSoon(held, today, withinDays)) return false;
  return !all.some(
    (other) =>
      other.id !== held.id &&
      other.process === held.process &&
      other.level === held.level &&
      isInForce(other, today) &&
      !endsSoon(other, today, withinDays),
  );
}
