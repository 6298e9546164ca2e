import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useMe } from '../../api/me.ts';
import { ChooseOwnPassword } from '../../features/people/choose-own-password.tsx';
import { SetUpSecondFactor } from '../../features/people/second-factor.tsx';
import { Button } from '../../ui/Button.tsx';
import { useNavigateTo } from '../../ui/Link.tsx';
import { OutsidePage } from './OutsidePage.tsx';

const words = {
  'own-password': {
    title: 'Choose your own password',
    lead: 'The one you have was given to you by someone who knows it. What you sign must be yours alone.',
  },
  'second-factor': {
    title: 'Set up one-time codes',
    lead: 'Your role needs a second factor beside the password. You need a telephone with an authenticator.',
  },
} as const;

/** What someone must set up before anything else is open to them. `onDone` when nothing is due any more. */
export function DuePage({ onDone }: { onDone: () => void }) {
  const me = useMe();
  // The recovery codes are still to be read when the server says that nothing is due any more.
  const [due] = useState(me.due);
  const queries = useQueryClient();
  const navigate = useNavigateTo();
  const signOut = useCommand(peopleOperations.signOut);
  const leave = () => {
    queries.clear();
    navigate('/sign-in');
  };
  return (
    <OutsidePage {...words[due ?? 'own-password']}>
      {due === 'second-factor' ? (
        <SetUpSecondFactor hasOne={false} onDone={onDone} />
      ) : (
        <ChooseOwnPassword isFirst onDone={onDone} />
      )}
      <Button weight="quiet" onPress={() => signOut.mutate({ input: {} }, { onSettled: leave })}>
        Sign out
      </Button>
    </OutsidePage>
  );
}
