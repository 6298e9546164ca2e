import { useSyncExternalStore } from 'react';

const paper = globalThis.matchMedia?.('print');

/** Whether the page is being laid out for paper now: what only paper shows need not be there before. */
export function usePrinting(): boolean {
  return useSyncExternalStore(
    (changed) => {
      paper?.addEventListener('change', changed);
      return () => paper?.removeEventListener('change', changed);
    },
    () => paper?.matches ?? false,
  );
}
