import { allocationOperations } from '@hubwright/contracts/kits/allocation-operations';
import type { Reply, Sent } from '@hubwright/contracts/operation';
import type { RowOf } from '../../api/pages.ts';
import { queryFor } from '../../api/query.ts';

type ToFill = Reply<typeof allocationOperations.kitsToFill>;
export type KitToFill = ToFill['kits'][number];
export type KitLeftOut = RowOf<typeof allocationOperations.kitsLeftOut>;

export const toFillQuery = queryFor(allocationOperations.kitsToFill, {});

/** More are accepted in a second go. */
export const mostAtOnce = 60;

/** What is sent when these kits are accepted: exactly what was shown. */
export function acceptance(kits: readonly KitToFill[]): Sent<typeof allocationOperations.acceptFill> {
  return {
    kits: kits.slice(0, mostAtOnce).map(({ kitId, version, picks }) => ({
      kitId,
      version,
      picks: picks.map(({ lineId, lotId, quantity }) => ({ lineId, lotId, quantity })),
    })),
  };
}
