import type { Operation, Reply, Sent } from '@hubwright/contracts/operation';
import { infiniteQueryOptions, keepPreviousData, useInfiniteQuery } from '@tanstack/react-query';
import type { z } from 'zod';
import { call } from './call.ts';
import type { ProblemError } from './problem.ts';

/** A read that answers with one page of rows and where the next one starts. */
export type ListOperation<Row> = Operation<z.ZodObject, z.ZodType<{ rows: Row[]; next: string | null }>>;

export type RowOf<O extends ListOperation<unknown>> = Reply<O>['rows'][number];

/** The rows read so far, and how to read on. */
export interface Pages<Row> {
  readonly rows: readonly Row[];
  readonly problem: ProblemError | null;
  /** Nothing has come yet. */
  readonly isFirst: boolean;
  readonly isReading: boolean;
  readonly more: (() => void) | undefined;
}

const pageLength = 100;

/**
 * A list page by page, following the shop live. While another filter is read, the earlier rows stay in sight.
 *
 * `const lots = usePages(inventoryOperations.listLots, { search })`
 */
export function usePages<O extends ListOperation<unknown>>(
  op: O,
  input: Omit<Sent<O>, 'limit' | 'after'>,
): Pages<RowOf<O>> & { readonly first: Reply<O> | undefined } {
  const answer = useInfiniteQuery(
    infiniteQueryOptions<Reply<O>, ProblemError, { pages: Reply<O>[] }, readonly unknown[], string | undefined>({
      queryKey: [op.noun, op.id, 'pages', input],
      queryFn: ({ signal, pageParam }) =>
        call(op, { ...input, limit: pageLength, ...(pageParam ? { after: pageParam } : {}) } as unknown as Sent<O>, {
          signal,
        }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.next ?? undefined,
      placeholderData: keepPreviousData as never,
    }),
  );
  return {
    // What an answer says beside its rows is said of the whole list.
    first: answer.data?.pages[0],
    rows: answer.data?.pages.flatMap((each) => each.rows) ?? [],
    problem: answer.error,
    isFirst: answer.isPending,
    isReading: answer.isFetching,
    more: answer.hasNextPage ? () => void answer.fetchNextPage() : undefined,
  };
}
