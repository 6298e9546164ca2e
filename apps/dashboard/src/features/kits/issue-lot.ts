import { kitsOperations } from '@hubwright/contracts/kits/operations';
import type { Reply, Sent } from '@hubwright/contracts/operation';
import { type QueryClient, useQueryClient } from '@tanstack/react-query';
import { useCallback, useRef, useState } from 'react';
import { call, newKey } from '../../api/call.ts';
import { ProblemError } from '../../api/problem.ts';
import { refused, taken } from './tones.ts';

export type Issued = Reply<typeof kitsOperations.issueLot>;

/** What became of one scan. */
export type ScanOutcome =
  | { readonly id: number; readonly code: string; readonly kind: 'waiting' }
  | { readonly id: number; readonly code: string; readonly kind: 'taken'; readonly issued: Issued }
  | { readonly id: number; readonly code: string; readonly kind: 'refused'; readonly problem: ProblemError }
  | { readonly id: number; readonly code: string; readonly kind: 'undone' };

const triesOfOneScan = 4;
const kept = 30;

/** One scan under one key until the server has answered: a lost network never issues twice. */
async function issueOnce(scan: Sent<typeof kitsOperations.issueLot>): Promise<Issued> {
  const key = newKey();
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await call(kitsOperations.issueLot, scan, { key });
    } catch (error) {
      if (!(error instanceof ProblemError && error.mayRepeat) || attempt === triesOfOneScan) throw error;
      await new Promise((resolve) => setTimeout(resolve, 300 * 2 ** attempt));
    }
  }
}

async function outcomeOf(id: number, scan: Sent<typeof kitsOperations.issueLot>): Promise<ScanOutcome> {
  const code = scan.lotCode;
  try {
    return { id, code, kind: 'taken', issued: await issueOnce(scan) };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { id, code, kind: 'refused', problem: error };
  }
}

function refresh(queries: QueryClient) {
  for (const noun of kitsOperations.issueLot.touches) void queries.invalidateQueries({ queryKey: [noun] });
}

/**
 * Scans in the order they came, one after another: each is an intention of its own with a key of its own, and the next
 * is not lost while one is under way. The newest outcome is first.
 */
export function useScanQueue(kitId: string, withSound: boolean) {
  const queries = useQueryClient();
  const [outcomes, setOutcomes] = useState<readonly ScanOutcome[]>([]);
  const last = useRef<Promise<void>>(Promise.resolve());
  const count = useRef(0);
  const sound = useRef(withSound);
  sound.current = withSound;
  const settle = useCallback((outcome: ScanOutcome) => {
    setOutcomes((all) => all.map((each) => (each.id === outcome.id ? outcome : each)));
  }, []);
  const scan = useCallback(
    (code: string, quantity?: number) => {
      count.current += 1;
      const id = count.current;
      setOutcomes((all) => [{ id, code, kind: 'waiting' } as const, ...all].slice(0, kept));
      last.current = last.current.then(async () => {
        const outcome = await outcomeOf(id, { kitId, lotCode: code, ...(quantity === undefined ? {} : { quantity }) });
        if (sound.current) (outcome.kind === 'taken' ? taken : refused)();
        settle(outcome);
        refresh(queries);
      });
    },
    [kitId, queries, settle],
  );
  return { outcomes, scan, settle };
}
