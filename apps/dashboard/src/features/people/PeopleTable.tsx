import { roleTitles } from '@hubwright/contracts/roles';
import type { ReactNode } from 'react';
import { dateIn } from '../../format/dates.ts';
import { useShop } from '../../format/shop-context.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { endsSoon, isInForce, type Person } from './list-people.ts';

function rolesOf(person: Person): string {
  return person.roles.map((role) => roleTitles[role]).join(', ');
}

function columnsFor(today: string): readonly Column<Person>[] {
  const inForce = (person: Person) => person.authorisations.filter((each) => isInForce(each, today)).length;
  const soon = (person: Person) => person.authorisations.filter((each) => endsSoon(each, today)).length;
  return [
    { id: 'name', header: 'Name', value: (person) => person.displayName },
    { id: 'initials', header: 'Initials', value: (person) => person.initials },
    { id: 'roles', header: 'Roles', value: rolesOf },
    {
      id: 'authorised',
      header: 'Authorised for',
      value: inForce,
      isNumber: true,
      cell: (person) => (
        <>
          {soon(person) > 0 ? <StateMark state="waiting" word={`${soon(person)} ending soon`} /> : null}{' '}
          {inForce(person)}
        </>
      ),
    },
    {
      id: 'account',
      header: 'Account',
      value: (person) => (person.active ? 'on' : 'off'),
      cell: (person) => (person.active ? 'on' : <StateMark state="hold" word="turned off" />),
    },
  ];
}

/** Everyone with their roles; opening a row shows what the person is authorised for. */
export function PeopleTable({
  people,
  hrefOf,
  tools,
}: {
  people: readonly Person[];
  hrefOf: (person: Person) => string;
  tools?: ReactNode;
}) {
  const { zone } = useShop();
  return (
    <DataTable
      caption="People"
      rows={people}
      columns={columnsFor(dateIn(zone, new Date()))}
      rowKey={(person) => person.id}
      rowHref={hrefOf}
      tools={tools}
      empty={<EmptyState title="Nobody fits">Clear the filter to see everyone.</EmptyState>}
    />
  );
}
