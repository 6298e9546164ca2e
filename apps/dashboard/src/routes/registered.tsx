import { roleTitles } from '@hubwright/contracts/roles';
import { createRoute } from '@tanstack/react-router';
import { Suspense } from 'react';
import { useMe } from '../api/me.ts';
import { ViewHead } from '../shell/ViewHead.tsx';
import { EmptyState } from '../ui/EmptyState.tsx';
import { Skeleton } from '../ui/Skeleton.tsx';
import { type View, views } from '../views/registry.ts';
import { signedInRoute } from './signed-in.tsx';

function Framed({ view }: { view: View }) {
  const { roles } = useMe();
  const Page = view.component;
  if (!view.roles.some((role) => roles.includes(role))) {
    return (
      <EmptyState title={`No, because ${view.title} is not open to your roles`}>
        It is for: {view.roles.map((role) => roleTitles[role]).join(', ')}.
      </EmptyState>
    );
  }
  return (
    <>
      {view.ownHead ? null : <ViewHead title={view.title} question={view.question} />}
      <Suspense fallback={<Skeleton lines={6} />}>
        <Page />
      </Suspense>
    </>
  );
}

/** One route per entry of the registry. */
export const registeredRoutes = views.map((view) =>
  createRoute({
    getParentRoute: () => signedInRoute,
    path: view.path as string,
    loader: () => (view.component as { preload?: () => Promise<unknown> }).preload?.(),
    component: () => <Framed view={view} />,
  }),
);
