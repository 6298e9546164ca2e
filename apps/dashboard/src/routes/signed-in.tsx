import { createRoute, redirect } from '@tanstack/react-router';
import { meQuery } from '../api/me.ts';
import { ProblemError } from '../api/problem.ts';
import { Gate } from '../shell/Gate.tsx';
import { rootRoute } from './root.tsx';

/** Everything behind sign-in: knows who is there before any page is shown. */
export const signedInRoute = createRoute({
  getParentRoute: () => rootRoute,
  id: 'signed-in',
  beforeLoad: async ({ context, location }) => {
    try {
      return { me: await context.queries.ensureQueryData(meQuery) };
    } catch (error) {
      if (!(error instanceof ProblemError) || error.type !== 'not-signed-in') throw error;
      throw redirect({ to: '/sign-in' as string, search: { back: location.href } as never });
    }
  },
  component: Gate,
});
