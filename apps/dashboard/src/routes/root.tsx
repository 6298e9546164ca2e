import type { QueryClient } from '@tanstack/react-query';
import { createRootRouteWithContext, Outlet, useRouter } from '@tanstack/react-router';
import { I18nProvider, RouterProvider } from 'react-aria-components';
import { NotFound, RouteProblem } from '../shell/RouteProblem.tsx';

export interface RouterContext {
  readonly queries: QueryClient;
}

/** Links inside widgets (menus, buttons) go through the router too. */
function Root() {
  const router = useRouter();
  return (
    <I18nProvider locale="en-US">
      <RouterProvider navigate={(href) => void router.navigate({ href })}>
        <Outlet />
      </RouterProvider>
    </I18nProvider>
  );
}

export const rootRoute = createRootRouteWithContext<RouterContext>()({
  component: Root,
  errorComponent: RouteProblem,
  notFoundComponent: NotFound,
});
