import { peopleOperations } from '@hubwright/contracts/people/operations';
import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { roleTitles } from '@hubwright/contracts/roles';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { Tabs } from '../../ui/Tabs.tsx';
import { AbsenceList } from './AbsenceList.tsx';
import { AccountActions } from './AccountActions.tsx';
import { AuthorisationList } from './AuthorisationList.tsx';
import { ChangePersonForm } from './change-person.tsx';
import { GrantForm } from './grant-authorisation.tsx';
import type { Person } from './list-people.ts';
import { TrainingLog } from './TrainingLog.tsx';
import { UnlockForm } from './unlock-sign-in.tsx';

function ChangeDialog({ person, onClose }: { person: Person; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(person);
  return (
    <div className="stack">
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <ChangePersonForm key={seen.version} person={seen} onDone={onClose} onCancel={onClose} />
    </div>
  );
}

/** One person: who they are, what they are here for, what they may sign. */
export function PersonSheet({ person }: { person: Person }) {
  const [open, setOpen] = useState<'change' | 'grant' | 'unlock'>();
  const mayChange = useMay(peopleOperations.changePerson);
  const mayUnlock = useMay(peopleOperations.unlockSignIn);
  const mayGrant = useMay(peopleOperations.grantAuthorisation);
  const mayRevoke = useMay(peopleOperations.revokeAuthorisation);
  const maySeeAbsences = useMay(workingTimeOperations.absencesOf);
  const close = () => setOpen(undefined);
  return (
    <section className="sheet stack" aria-label={person.displayName}>
      <div className="row between">
        <h2>{person.displayName}</h2>
        {person.active ? null : <StateMark state="hold" word={person.leftOn ? 'has left' : 'account turned off'} />}
      </div>
      {person.leftOn ? (
        <p>
          Left on <DateText date={person.leftOn} />: {person.leaveReason}
        </p>
      ) : null}
      <p>
        {person.roles.map((role) => roleTitles[role]).join(', ')}
        <span className="soft">
          {' '}
          · signs as <span className="code">{person.initials}</span> · signs in as{' '}
          <span className="code">{person.signInName}</span>
          {person.email ? ` · ${person.email}` : ''}
          {person.certificateNumber ? (
            <>
              {' '}
              · certificate <span className="code">{person.certificateNumber}</span>
            </>
          ) : null}
        </span>
      </p>
      <div className="row no-print">
        {mayChange && !person.leftOn ? <Button onPress={() => setOpen('change')}>Change or turn off</Button> : null}
        {mayUnlock && !person.leftOn ? <Button onPress={() => setOpen('unlock')}>Unlock sign-in…</Button> : null}
        <AccountActions person={person} />
      </div>
      <Tabs
        label={`About ${person.displayName}`}
        sheets={[
          {
            id: 'authorisations',
            title: 'May sign for',
            content: (
              <div className="stack">
                {mayGrant ? (
                  <Button weight="next" onPress={() => setOpen('grant')}>
                    Authorise for…
                  </Button>
                ) : null}
                <AuthorisationList authorisations={person.authorisations} mayRevoke={mayRevoke} />
              </div>
            ),
          },
          { id: 'training', title: 'Training', content: <TrainingLog personId={person.id} /> },
          ...(maySeeAbsences
            ? [{ id: 'absences', title: 'Absences', content: <AbsenceList personId={person.id} /> }]
            : []),
        ]}
      />
      <Dialog title={`Change ${person.displayName}`} isOpen={open === 'change'} onClose={close}>
        <ChangeDialog person={person} onClose={close} />
      </Dialog>
      <Dialog title={`Unlock ${person.displayName}`} isOpen={open === 'unlock'} onClose={close}>
        <UnlockForm person={person} onDone={close} onCancel={close} />
      </Dialog>
      <Dialog title={`Authorise ${person.displayName}`} isOpen={open === 'grant'} onClose={close}>
        <GrantForm person={person} onDone={close} onCancel={close} />
      </Dialog>
    </section>
  );
}
