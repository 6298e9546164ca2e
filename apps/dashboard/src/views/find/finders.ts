import { peopleOperations } from '@hubwright/contracts/people/operations';
import type { Role } from '@hubwright/contracts/roles';
import { unitOperations } from '@hubwright/contracts/units/operations';
import type { QueryClient } from '@tanstack/react-query';
import { mayCall } from '../../api/permission.ts';
import { queryFor } from '../../api/query.ts';
import { peopleQuery } from '../../features/people/list-people.ts';

/** Something a search or scan named, and where it leads. */
export interface Hit {
  readonly id: string;
  readonly kind: string;
  readonly name: string;
  readonly detail: string;
  readonly href: string;
  /** The code is this thing's own number or name, not only part of it: a scan goes straight there. */
  readonly isExact: boolean;
}

/** One kind of thing that can be found by text: who may, and how. */
export interface Finder {
  readonly id: string;
  readonly mayUse: (roles: readonly Role[]) => boolean;
  readonly find: (queries: QueryClient, text: string) => Promise<readonly Hit[]>;
}

const kindWords = {
  unit: 'Unit',
  'part-of-unit': 'Part of a unit',
  'work-order': 'Work order',
  traveler: 'Traveler',
  'traveler-step': 'Step of a traveler',
  kit: 'Kit',
  lot: 'Lot',
  part: 'Part number',
  order: 'Purchase order',
  supplier: 'Supplier',
  customer: 'Customer',
  aircraft: 'Aircraft',
  instrument: 'Instrument',
  'field-balance': 'Balance on the aircraft',
} as const;

/** Every kind of thing the search box and a scan can find. A new kind is one more entry. */
export const finders: readonly Finder[] = [
  {
    id: 'codes',
    mayUse: (roles) => mayCall(unitOperations.find, roles),
    find: async (queries, text) => {
      const { rows } = await queries.fetchQuery(queryFor(unitOperations.find, { text: text.slice(0, 100) }));
      return rows.map(({ kind, id, title, detail, path, exact }) => ({
        id,
        kind: kindWords[kind],
        name: title,
        detail,
        href: path,
        isExact: exact,
      }));
    },
  },
  {
    id: 'people',
    mayUse: (roles) => mayCall(peopleOperations.listPeople, roles),
    find: async (queries, text) => {
      const { rows } = await queries.fetchQuery(peopleQuery);
      const typed = text.toLowerCase();
      return rows
        .filter((person) =>
          `${person.displayName} ${person.signInName} ${person.initials}`.toLowerCase().includes(typed),
        )
        .map((person) => ({
          id: person.id,
          kind: 'Person',
          name: person.displayName,
          detail: person.signInName,
          href: `/administration/people?person=${person.id}`,
          isExact: person.signInName === typed,
        }));
    },
  },
];
