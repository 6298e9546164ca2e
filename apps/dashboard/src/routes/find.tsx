import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { NotFound } from '../shell/RouteProblem.tsx';
import { signedInRoute } from './signed-in.tsx';

/** Where searches and scans that no view took arrive: `/find?code=…`. */
export const findRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/find',
  component: lazyRouteComponent(() => import('../views/find/FindPage.tsx'), 'FindPage'),
});

/** Any other address, inside the shell so that the search box is at hand. */
export const elsewhereRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '$',
  component: NotFound,
});
