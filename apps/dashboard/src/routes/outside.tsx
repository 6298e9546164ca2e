import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { rootRoute } from './root.tsx';

/** Pages for people who are not signed in. */
export const signInRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/sign-in',
  validateSearch: z.object({ back: z.string().optional().catch(undefined) }),
  component: lazyRouteComponent(() => import('../views/outside/SignInPage.tsx'), 'SignInPage'),
});

export const setUpRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/set-up',
  component: lazyRouteComponent(() => import('../views/outside/SetUpPage.tsx'), 'SetUpPage'),
});
