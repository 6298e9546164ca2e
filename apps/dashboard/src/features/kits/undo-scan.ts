import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { call, newKey } from '../../api/call.ts';
import type { ProblemError } from '../../api/problem.ts';
import type { Issued } from './issue-lot.ts';

/** Where each movement of a scan took its pieces from, so that they go back to the same bin. */
async function takenFrom(kitId: string, issued: Issued) {
  const { rows } = await call(inventoryOperations.listMovements, { kitId, limit: 200 });
  const moved = rows.filter((row) => issued.movementIds.includes(row.id) && row.from.kind === 'bin');
  const byBin = new Map<string, number>();
  for (const { from, quantity } of moved) byBin.set(from.ref, (byBin.get(from.ref) ?? 0) + quantity);
  return [...byBin];
}

/** Takes a scan back: what it put into the tray returns to the bin it came from. */
export function useUndoScan(kitId: string) {
  const queries = useQueryClient();
  return useMutation<void, ProblemError, Issued>({
    mutationFn: async (issued) => {
      for (const [bin, quantity] of await takenFrom(kitId, issued)) {
        await call(kitsOperations.returnFromTray, { kitId, lotCode: issued.lotCode, bin, quantity }, { key: newKey() });
      }
    },
    onSettled: () => {
      for (const noun of kitsOperations.returnFromTray.touches) void queries.invalidateQueries({ queryKey: [noun] });
    },
  });
}
