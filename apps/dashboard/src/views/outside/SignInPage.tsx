import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { useEffect } from 'react';
import { queryFor } from '../../api/query.ts';
import { SignInForm } from '../../features/people/sign-in.tsx';
import { useNavigateTo } from '../../ui/Link.tsx';
import { OutsidePage } from './OutsidePage.tsx';
import { safeReturn } from './safe-return.ts';

/** Sign-in; a shop without its first administrator is led to the set-up page instead. */
export function SignInPage() {
  const { back } = useSearch({ strict: false }) as { back?: string };
  const navigate = useNavigateTo();
  const setUp = useQuery(queryFor(peopleOperations.setUpState, {}));
  useEffect(() => {
    if (setUp.data?.needed) navigate('/set-up', { replace: true });
  }, [setUp.data, navigate]);
  return (
    <OutsidePage title="Sign in" lead="Records made here carry your name, so use your own.">
      <SignInForm onSignedIn={() => navigate(safeReturn(back), { replace: true })} />
    </OutsidePage>
  );
}
