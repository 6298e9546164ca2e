import type { Reply } from '@hubwright/contracts/operation';
import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { useQuery } from '@tanstack/react-query';
import { call } from '../../api/call.ts';
import { useCommand } from '../../api/command.ts';
import { levelWords, processWords } from '../../format/process-words.ts';
import { Link } from '../../ui/Link.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Person } from './list-people.ts';
import { ReasonForm } from './ReasonForm.tsx';

type InHand = Reply<typeof accessOperations.endPerson>['inHand'];

/** What would be left to take over, from a rehearsal that keeps nothing. */
function useRehearsal(person: Person) {
  return useQuery({
    queryKey: ['people', 'end-person-rehearsal', person.id, person.version],
    queryFn: () =>
      call(
        accessOperations.endPerson,
        { personId: person.id, reason: 'rehearsal' },
        { version: person.version, dryRun: true },
      ),
    retry: false,
  });
}

function LeftToTakeOver({ holds, findings, soleHolder }: InHand) {
  if (holds.length + findings.length + soleHolder.length === 0) return <p>Nothing of theirs is left open.</p>;
  return (
    <div className="stack tight">
      <strong>Left for others to take over</strong>
      <ul>
        {holds.map(({ id, workOrderId, workOrder, reason }) => (
          <li key={id}>
            Hold on <Link href={`/work-orders/${workOrderId}`}>{workOrder}</Link>: {reason}
          </li>
        ))}
        {findings.map(({ id, workOrderId, workOrder, number }) => (
          <li key={id}>
            Finding {number} of <Link href={`/work-orders/${workOrderId}`}>{workOrder}</Link>, not yet decided
          </li>
        ))}
        {soleHolder.map(({ process, level }) => (
          <li key={`${process} ${level}`}>
            Nobody else may sign for {processWords[process].toLowerCase()} ({levelWords[level]})
          </li>
        ))}
      </ul>
    </div>
  );
}

/** A person leaves: what ends, what stays, and what others must take over, before it is done. */
export function EndPersonForm({ person, onDone }: { person: Person; onDone: () => void }) {
  const end = useCommand(accessOperations.endPerson);
  const rehearsal = useRehearsal(person);
  const done = () => {
    say(`${person.displayName} has left: every way in is closed.`);
    onDone();
  };
  return (
    <ReasonForm
      problem={end.error}
      isPending={end.isPending}
      submit={`End the account of ${person.displayName}`}
      onSubmit={(reason) =>
        end.mutate({ input: { personId: person.id, reason }, version: person.version }, { onSuccess: done })
      }
      onCancel={onDone}
    >
      <p>
        Sessions, password, PIN, badge, second factor and every authorisation end now. The name and what they signed
        stay on the records.
      </p>
      {rehearsal.data ? <LeftToTakeOver {...rehearsal.data.inHand} /> : null}
    </ReasonForm>
  );
}
