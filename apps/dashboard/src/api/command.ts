import type { Operation, Reply, Sent } from '@hubwright/contracts/operation';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRef } from 'react';
import { call, newKey } from './call.ts';
import { type ProblemError, problemFromIssues } from './problem.ts';

/** What a form sends: the input and, for versioned commands, the version the person saw. */
export interface Sending<O extends Operation> {
  readonly input: Sent<O>;
  readonly version?: number;
}

interface Then<O extends Operation> {
  readonly onSuccess?: (reply: Reply<O>) => void;
  readonly onError?: (problem: ProblemError) => void;
  readonly onSettled?: () => void;
}

/**
 * One write. The key is made when the form mounts and kept until the server has answered yes, so pressing twice or losing
 * the network never does the thing twice. On success every view of the nouns it touches is read again.
 *
 * `const receive = useCommand(routes.receiveLot); receive.mutate({ input }, { onSuccess })`; `receive.error` is a ProblemError.
 * `onSuccess` comes after the views were read again, and also when that made the asking form disappear.
 */
export function useCommand<O extends Operation>(op: O) {
  const queries = useQueryClient();
  const key = useRef(newKey());
  const refresh = () => Promise.all(op.touches.map((noun) => queries.invalidateQueries({ queryKey: [noun] })));
  const mutation = useMutation<Reply<O>, ProblemError, Sending<O>>({
    mutationKey: [op.noun, op.id],
    mutationFn: ({ input, version }) => {
      const checked = op.input.safeParse(input);
      if (!checked.success) throw problemFromIssues(checked.error);
      return call(op, input, { key: key.current, ...(version === undefined ? {} : { version }) });
    },
    retry: (count, problem) => problem.mayRepeat && count < 3,
    retryDelay: (count) => 500 * 2 ** count,
    onSuccess: () => {
      key.current = newKey();
      return refresh();
    },
    onError: (problem) => {
      // The earlier attempt under this key went through after all, or someone else was faster: show what is true now.
      if (problem.type === 'key-reused') key.current = newKey();
      if (problem.type === 'key-reused' || problem.type === 'out-of-date') return refresh();
      return undefined;
    },
  });
  const mutate = (sending: Sending<O>, then: Then<O> = {}) => {
    const done = mutation.mutateAsync(sending).then(then.onSuccess, then.onError ?? (() => undefined));
    void done.finally(then.onSettled);
  };
  return { ...mutation, mutate };
}
