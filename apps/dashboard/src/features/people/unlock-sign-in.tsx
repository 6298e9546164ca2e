import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useCommand } from '../../api/command.ts';
import { Button } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Person } from './list-people.ts';

/** Lifts the lock after too many wrong passwords. Pressing it when there is no lock changes nothing. */
export function UnlockSignIn({ person }: { person: Person }) {
  const unlock = useCommand(peopleOperations.unlockSignIn);
  const press = () =>
    unlock.mutate(
      { input: { personId: person.id } },
      { onSuccess: () => say(`${person.displayName} can sign in again.`) },
    );
  return (
    <>
      <Button onPress={press} isPending={unlock.isPending}>
        Unlock sign-in
      </Button>
      {unlock.error ? <Refusal problem={unlock.error} /> : null}
    </>
  );
}
