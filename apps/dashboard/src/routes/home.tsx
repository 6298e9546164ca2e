import { createRoute, redirect } from '@tanstack/react-router';
import { EmptyState } from '../ui/EmptyState.tsx';
import { homeFor } from '../views/navigation.ts';
import { signedInRoute } from './signed-in.tsx';

/** `/` leads to the view of the person's role. */
export const homeRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/',
  beforeLoad: ({ context }) => {
    const home = homeFor(context.me.roles);
    if (home) throw redirect({ to: home as string, replace: true });
  },
  component: () => (
    <EmptyState title="There is no page for your roles yet">
      Ask an administrator which roles you should hold.
    </EmptyState>
  ),
});
