import { useQueryClient } from '@tanstack/react-query';
import { useMe } from '../api/me.ts';
import { useSessionLost } from '../api/session-lost.ts';
import { SignInForm } from '../features/people/sign-in.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { useNavigateTo } from '../ui/Link.tsx';

/** The session ended while a page was open: sign in over it, so that nothing typed is lost. Someone else starts at their own view. */
export function SignInAgain() {
  const isLost = useSessionLost();
  const me = useMe();
  const queries = useQueryClient();
  const navigate = useNavigateTo();
  return (
    <Dialog title="Your session has ended" isOpen={isLost} onClose={() => navigate('/sign-in')} isAlert>
      <div className="stack">
        <p>Sign in again to go on where you were. What you have typed is still there.</p>
        <SignInForm
          onSignedIn={(now) => {
            if (now.id !== me.id) navigate('/');
            void queries.invalidateQueries();
          }}
        />
      </div>
    </Dialog>
  );
}
