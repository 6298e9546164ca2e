/*
 * The dashboard.
 *
 * A feature: `features/<noun>/<verb>.tsx`, one file per server operation: its query (`queryFor(op, input)`) or its form
 * (`useCommand(op)` inside `CommandForm`), imported from `@hubwright/contracts/<noun>/operations`. Fields are named by
 * their place in the input (`shop/name`), so that a refusal's pointers find them. Features do not import each other.
 *
 * A view: a page in `views/<area>/` that composes features, and one entry in `views/registry.ts`. Its heading is the
 * question it answers. Filters live in the address (`useAddress`). Scans: `useScan` or `ScanField`.
 *
 * A picture: `ui/pictures/`, a pure function of props to SVG with a text alternative that says the same, coloured by the
 * classes of `ui/styles/pictures.css`, with a shape for each state.
 *
 * No inline script or style element: the content policy allows only files. A view's own layout is a `.module.css` beside it.
 */
import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { makeQueryClient } from './api/query.ts';
import { makeRouter } from './router.tsx';
import './ui/styles/all.css';

const queries = makeQueryClient();
const router = makeRouter(queries);
const root = document.getElementById('root');
if (!root) throw new Error('index.html has no #root');

createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  </StrictMode>,
);
