import type { Operation, Reply, Sent } from '@hubwright/contracts/operation';
import { MutationCache, QueryCache, QueryClient, queryOptions } from '@tanstack/react-query';
import { call } from './call.ts';
import { ProblemError } from './problem.ts';
import { sessionLost } from './session-lost.ts';

/** Everything the dashboard reads goes through this one factory: keys start with the noun, so a write can name what it makes stale. */
export function queryFor<O extends Operation>(op: O, input: Sent<O>) {
  return queryOptions<Reply<O>, ProblemError>({
    queryKey: [op.noun, op.id, input],
    queryFn: ({ signal }) => call(op, input, { signal }),
  });
}

const minute = 60_000;

function noticeLostSession(error: Error) {
  if (error instanceof ProblemError && error.type === 'not-signed-in') sessionLost.set(true);
}

/** `networkMode: always`, because the shop's server is on the shop's own network whatever the browser thinks of the internet. */
export function makeQueryClient(): QueryClient {
  return new QueryClient({
    queryCache: new QueryCache({ onError: noticeLostSession }),
    mutationCache: new MutationCache({ onError: noticeLostSession }),
    defaultOptions: {
      queries: {
        staleTime: minute,
        gcTime: 10 * minute,
        networkMode: 'always',
        retry: (count, error) => error instanceof ProblemError && error.mayRepeat && count < 2,
      },
      mutations: { networkMode: 'always' },
    },
  });
}
