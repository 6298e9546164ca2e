import { useNavigate, useSearch } from '@tanstack/react-router';
import type { z } from 'zod';

/**
 * Filters and choices kept in the address bar, so that a reload, a link and the back button keep them. Every value in
 * the address is text; give each key a default with `.catch()`.
 *
 * `const [filter, setFilter] = useAddress(z.object({ search: z.string().catch('') }))`
 */
export function useAddress<S extends z.ZodObject>(schema: S) {
  const search = useSearch({ strict: false }) as Record<string, unknown>;
  const navigate = useNavigate();
  const values = schema.parse(search) as z.output<S>;
  const set = (changes: Partial<z.input<S>>) => {
    const next = { ...search, ...changes } as Record<string, unknown>;
    for (const [key, value] of Object.entries(next)) if (value === '' || value === undefined) delete next[key];
    void navigate({ to: '.', search: next as never, replace: true });
  };
  return [values, set] as const;
}
