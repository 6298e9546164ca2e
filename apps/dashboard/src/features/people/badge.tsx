import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Person } from './list-people.ts';
import { ReasonForm } from './ReasonForm.tsx';

function Printed({ personId }: { personId: string }) {
  const { code, displayName, picture } = useSuspenseQuery(queryFor(accessOperations.badgeToPrint, { personId })).data;
  return (
    <figure>
      <img src={picture} alt={`Barcode ${code}`} width={280} />
      <figcaption>
        {displayName} <span className="code">{code}</span>
      </figcaption>
    </figure>
  );
}

/** The badge someone scans at a shared tablet: issued, printed, revoked. */
export function BadgeSheet({ person, onDone }: { person: Person; onDone: () => void }) {
  const issue = useCommand(accessOperations.issueBadge);
  const revoke = useCommand(accessOperations.revokeBadge);
  const give = () => issue.mutate({ input: { personId: person.id } });
  if (person.badgeSince === null) {
    return (
      <div className="stack">
        <p>
          No badge yet. With one they take over a shared tablet by a scan and their PIN, where they signed in that day.
        </p>
        {issue.error ? <Refusal problem={issue.error} /> : null}
        <Button weight="next" onPress={give} isPending={issue.isPending}>
          Issue a badge
        </Button>
      </div>
    );
  }
  const revoked = () => {
    say('The badge no longer works.');
    onDone();
  };
  return (
    <div className="stack">
      <p>
        Issued <InstantText instant={person.badgeSince} />. A lost badge is revoked; its code is never anyone’s again.
      </p>
      <Printed key={person.badgeSince} personId={person.id} />
      <div className="row">
        <Button onPress={() => window.print()}>Print</Button>
        <Button onPress={give} isPending={issue.isPending}>
          Issue another in its place
        </Button>
      </div>
      <ReasonForm
        problem={revoke.error}
        isPending={revoke.isPending}
        submit="Revoke the badge"
        onSubmit={(reason) => revoke.mutate({ input: { personId: person.id, reason } }, { onSuccess: revoked })}
        onCancel={onDone}
      >
        <p className="soft">Revoking takes effect at the next scan.</p>
      </ReasonForm>
    </div>
  );
}
