import type { QueryClient } from '@tanstack/react-query';
import { createRouter } from '@tanstack/react-router';
import { elsewhereRoute, findRoute } from './routes/find.tsx';
import { homeRoute } from './routes/home.tsx';
import { setUpRoute, signInRoute } from './routes/outside.tsx';
import { registeredRoutes } from './routes/registered.tsx';
import { rootRoute } from './routes/root.tsx';
import { signedInRoute } from './routes/signed-in.tsx';
import { NotFound, RouteProblem } from './shell/RouteProblem.tsx';
import { Skeleton } from './ui/Skeleton.tsx';

const tree = rootRoute.addChildren([
  signInRoute,
  setUpRoute,
  signedInRoute.addChildren([homeRoute, findRoute, ...registeredRoutes, elsewhereRoute]),
]);

/** Values in the address are plain text: a serial such as 0012 must not become a number on the way. */
function parseSearch(text: string): Record<string, string> {
  return Object.fromEntries(new URLSearchParams(text));
}

function stringifySearch(search: Record<string, unknown>): string {
  const given = Object.entries(search).filter(([, value]) => value !== undefined && value !== '');
  const text = new URLSearchParams(given.map(([key, value]) => [key, String(value)])).toString();
  return text === '' ? '' : `?${text}`;
}

export function makeRouter(queries: QueryClient) {
  return createRouter({
    routeTree: tree,
    context: { queries },
    parseSearch,
    stringifySearch,
    defaultPreload: 'intent',
    // Freshness is the queries' business; the router's own cache would override it.
    defaultPreloadStaleTime: 0,
    defaultPendingMs: 300,
    defaultPendingComponent: () => <Skeleton lines={6} />,
    defaultErrorComponent: RouteProblem,
    defaultNotFoundComponent: NotFound,
    scrollRestoration: true,
  });
}
