import { Suspense, useState } from 'react';
import { useMe } from '../../api/me.ts';
import { ChooseOwnPassword } from '../../features/people/choose-own-password.tsx';
import { ChooseOwnPin } from '../../features/people/choose-own-pin.tsx';
import { SetUpSecondFactor } from '../../features/people/second-factor.tsx';
import { OwnSessions } from '../../features/people/sessions.tsx';
import { OwnTraining } from '../../features/people/TrainingLog.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

/** One's own sessions and secrets. */
export function AccountPage() {
  const me = useMe();
  const [open, setOpen] = useState<'password' | 'pin' | 'codes'>();
  const close = () => setOpen(undefined);
  return (
    <div className="stack">
      <section className="sheet stack" aria-labelledby="what-opens">
        <h2 id="what-opens">What lets you in and signs for you</h2>
        <ul className="lines">
          <li>
            <div>
              <strong>Password</strong>
              <p className="small soft">Changing it signs you out everywhere else.</p>
            </div>
            <Button onPress={() => setOpen('password')}>Change the password</Button>
          </li>
          <li>
            <div>
              <strong>PIN</strong>{' '}
              <StateMark state={me.hasPin ? 'passed' : 'open'} word={me.hasPin ? 'set' : 'none yet'} />
              <p className="small soft">Signs at the bench; with a badge it takes over a shared tablet.</p>
            </div>
            <Button onPress={() => setOpen('pin')}>{me.hasPin ? 'Change the PIN' : 'Choose a PIN'}</Button>
          </li>
          <li>
            <div>
              <strong>One-time codes</strong>{' '}
              <StateMark state={me.hasSecondFactor ? 'passed' : 'open'} word={me.hasSecondFactor ? 'on' : 'off'} />
              <p className="small soft">Asked for at sign-in beside the password.</p>
            </div>
            <Button onPress={() => setOpen('codes')}>
              {me.hasSecondFactor ? 'Replace the authenticator' : 'Set up one-time codes'}
            </Button>
          </li>
        </ul>
      </section>
      <section className="sheet stack" aria-labelledby="where-in">
        <h2 id="where-in">Where you are signed in</h2>
        <OwnSessions />
      </section>
      <section className="sheet stack" aria-labelledby="own-training">
        <h2 id="own-training">Your training</h2>
        <Suspense fallback={<Skeleton />}>
          <OwnTraining />
        </Suspense>
      </section>
      <Dialog title="Change your password" isOpen={open === 'password'} onClose={close}>
        <ChooseOwnPassword isFirst={false} onDone={close} />
      </Dialog>
      <Dialog title="Your PIN" isOpen={open === 'pin'} onClose={close}>
        <ChooseOwnPin hasPin={me.hasPin} onDone={close} />
      </Dialog>
      <Dialog title="One-time codes" isOpen={open === 'codes'} onClose={close}>
        <SetUpSecondFactor hasOne={me.hasSecondFactor} onDone={close} />
      </Dialog>
    </div>
  );
}
