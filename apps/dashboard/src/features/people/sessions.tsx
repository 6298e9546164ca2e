import type { Reply } from '@hubwright/contracts/operation';
import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { AgeText, InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

const ownSessionsQuery = queryFor(accessOperations.ownSessions, {});
const allSessionsQuery = queryFor(accessOperations.listSessions, {});
type Session = Reply<typeof accessOperations.ownSessions>['rows'][number];

function Lines({ rows, onEnd, named }: { rows: readonly Session[]; onEnd: (ref: string) => void; named: boolean }) {
  return (
    <ul className="lines">
      {rows.map((session) => (
        <li key={session.ref}>
          <div>
            <strong>{named ? session.personName : session.device}</strong>{' '}
            <span className="soft">
              {named ? `${session.device}, ` : ''}
              {session.by === 'badge' ? 'by badge and PIN' : 'by password'}
            </span>
            <p className="small">
              since <InstantText instant={session.since} />, last seen <AgeText instant={session.lastSeen} /> ago
            </p>
          </div>
          {session.isThis ? (
            <StateMark state="note" word="this one" />
          ) : (
            <Button
              weight="quiet"
              aria-label={`End the session of ${session.personName} on ${session.device}`}
              onPress={() => onEnd(session.ref)}
            >
              End
            </Button>
          )}
        </li>
      ))}
    </ul>
  );
}

/** Where one is signed in. */
export function OwnSessions() {
  const { rows } = useSuspenseQuery(ownSessionsQuery).data;
  const end = useCommand(accessOperations.endOwnSession);
  return (
    <>
      <Lines rows={rows} named={false} onEnd={(ref) => end.mutate({ input: { ref } })} />
      {end.error ? <Refusal problem={end.error} /> : null}
    </>
  );
}

/** Where everyone, or one person, is signed in, for administrators. */
export function SessionsOf({ personId }: { personId?: string }) {
  const { rows } = useSuspenseQuery(allSessionsQuery).data;
  const end = useCommand(accessOperations.endSession);
  const shown = rows.filter((row) => personId === undefined || row.personId === personId);
  if (shown.length === 0) return <p className="soft">Signed in nowhere.</p>;
  return (
    <>
      <Lines rows={shown} named={personId === undefined} onEnd={(ref) => end.mutate({ input: { ref } })} />
      {end.error ? <Refusal problem={end.error} /> : null}
    </>
  );
}
