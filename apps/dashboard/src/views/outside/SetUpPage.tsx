import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { SetUpForm } from '../../features/people/set-up-shop.tsx';
import { LinkButton } from '../../ui/Button.tsx';
import { useNavigateTo } from '../../ui/Link.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { OutsidePage } from './OutsidePage.tsx';

/** Shown once in the life of a shop. */
export function SetUpPage() {
  const navigate = useNavigateTo();
  const state = useQuery(queryFor(peopleOperations.setUpState, {}));
  if (state.isPending) return <Skeleton lines={8} />;
  if (state.data?.needed === false) {
    return (
      <OutsidePage title="This shop is already set up" lead="Sign in, or ask an administrator for an account.">
        <LinkButton href="/sign-in" weight="next">
          Go to sign-in
        </LinkButton>
      </OutsidePage>
    );
  }
  return (
    <OutsidePage wide title="Set up this shop" lead="Once. An administrator can change all of it later.">
      <SetUpForm onDone={() => navigate('/sign-in', { replace: true })} />
    </OutsidePage>
  );
}
