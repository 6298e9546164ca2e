import { useQueryClient } from '@tanstack/react-query';
import { type Me, meQuery } from '../../api/me.ts';
import { sessionLost } from '../../api/session-lost.ts';

/** What follows when the server says who is here now: everything on screen is read again as that person. */
export function useTakeOver(): (me: Me) => void {
  const queries = useQueryClient();
  return (me) => {
    const before = queries.getQueryData<Me>(meQuery.queryKey);
    // What another person saw is not shown to this one, not even for a moment.
    if (before && before.id !== me.id) queries.removeQueries({ predicate: ({ queryKey }) => queryKey[1] !== 'me' });
    queries.setQueryData(meQuery.queryKey, me);
    sessionLost.set(false);
    void queries.invalidateQueries();
  };
}
