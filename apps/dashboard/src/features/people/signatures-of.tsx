import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { levelWords, processWords } from '../../format/process-words.ts';
import { InstantText } from '../../format/values.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { Person } from './list-people.ts';

function authorised(held: { process: string; level: string } | null): string {
  if (!held) return '';
  const process = processWords[held.process as keyof typeof processWords] ?? held.process;
  return `${process}, ${levelWords[held.level as keyof typeof levelWords] ?? held.level}`;
}

/** What a person signed, newest first, as the record keeps it: also after they left. */
export function SignaturesOf({ person }: { person: Person }) {
  const { rows } = useSuspenseQuery(queryFor(accessOperations.listSignatures, { personId: person.id, limit: 50 })).data;
  if (rows.length === 0) return <EmptyState title="Nothing signed yet">What they sign is listed here.</EmptyState>;
  return (
    <ul className="lines">
      {rows.map((row) => (
        <li key={row.entryId}>
          <div>
            <strong>
              <InstantText instant={row.at} />
            </strong>{' '}
            <span className="soft">{authorised(row.authorisation)}</span>
            <p className="small">“{row.meaning}”</p>
          </div>
        </li>
      ))}
    </ul>
  );
}
