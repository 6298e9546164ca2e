import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from './signed-in.tsx';

/** Where searches and scans that no view took arrive: `/find?code=…`. */
export const findRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/find',
  component: lazyRouteComponent(() => import('../views/find/FindPage.tsx'), 'FindPage'),
});
