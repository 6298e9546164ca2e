import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { Suspense, useState } from 'react';
import { useMay, useMe } from '../../api/me.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Menu } from '../../ui/Menu.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { BadgeSheet } from './badge.tsx';
import { EndPersonForm } from './end-person.tsx';
import type { Person } from './list-people.ts';
import { ResetPasswordForm, ResetSecondFactorForm } from './reset-sign-in.tsx';
import { SessionsOf } from './sessions.tsx';
import { SignaturesOf } from './signatures-of.tsx';
import { TakeBackForm } from './take-back-person.tsx';

type Asking = 'signatures' | 'sessions' | 'badge' | 'password' | 'codes' | 'end' | 'back';

const titles: Record<Asking, (name: string) => string> = {
  signatures: (name) => `What ${name} signed`,
  sessions: (name) => `Where ${name} is signed in`,
  badge: (name) => `Badge of ${name}`,
  password: (name) => `A first password for ${name}`,
  codes: (name) => `Second factor of ${name}`,
  end: (name) => `${name} leaves`,
  back: (name) => `${name} returns`,
};

function Content({ asking, person, onDone }: { asking: Asking; person: Person; onDone: () => void }) {
  switch (asking) {
    case 'signatures':
      return <SignaturesOf person={person} />;
    case 'sessions':
      return <SessionsOf personId={person.id} />;
    case 'badge':
      return <BadgeSheet person={person} onDone={onDone} />;
    case 'password':
      return <ResetPasswordForm person={person} onDone={onDone} />;
    case 'codes':
      return <ResetSecondFactorForm person={person} onDone={onDone} />;
    case 'end':
      return <EndPersonForm person={person} onDone={onDone} />;
    case 'back':
      return <TakeBackForm person={person} onDone={onDone} />;
  }
}

function useActions(person: Person): { id: Asking; text: string }[] {
  const isOther = useMe().id !== person.id;
  if (person.leftOn) return [{ id: 'back', text: 'Take back…' }];
  return [
    { id: 'badge', text: 'Badge…' },
    { id: 'sessions', text: 'Sessions…' },
    ...(isOther ? [{ id: 'password' as const, text: 'Forgot the password…' }] : []),
    ...(isOther && person.hasSecondFactor ? [{ id: 'codes' as const, text: 'Lost the second factor…' }] : []),
    ...(isOther ? [{ id: 'end' as const, text: 'Leaves the shop…' }] : []),
  ];
}

/** What is done with a person's account, and what they signed. */
export function AccountActions({ person }: { person: Person }) {
  const [asking, setAsking] = useState<Asking>();
  const mayEnd = useMay(accessOperations.endPerson);
  const actions = useActions(person);
  const close = () => setAsking(undefined);
  const title = asking ? titles[asking](person.displayName) : '';
  return (
    <>
      <Button onPress={() => setAsking('signatures')}>Signatures</Button>
      {mayEnd ? (
        <Menu
          label={`Account of ${person.displayName}`}
          groups={[{ actions: actions.map(({ id, text }) => ({ id, text, onAction: () => setAsking(id) })) }]}
        >
          Account…
        </Menu>
      ) : null}
      <Dialog
        title={title}
        isOpen={asking !== undefined}
        onClose={close}
        width={asking === 'signatures' ? 'wide' : 'narrow'}
      >
        <Suspense fallback={<Skeleton lines={4} />}>
          {asking ? <Content asking={asking} person={person} onDone={close} /> : null}
        </Suspense>
      </Dialog>
    </>
  );
}
