import type { Reply } from '@hubwright/contracts/operation';
import { bakeOperations } from '@hubwright/contracts/work-orders/bake-operations';
import type { BakeClock } from '@hubwright/contracts/work-orders/bake-shapes';
import { type BakeTimer, bakeTimer } from '@hubwright/rules/bake';
import { queryFor } from '../../api/query.ts';

/** Every plated part whose bake is not signed: those to begin first. */
export const bakesQuery = queryFor(bakeOperations.listBakes, {});
export type Bake = Reply<typeof bakeOperations.listBakes>['rows'][number];

export function timerOf({ platedAt, begun, alarmMinutes, ...spec }: BakeClock, now: number): BakeTimer {
  return bakeTimer({
    ...{ platedAt: Date.parse(platedAt), begunAt: begun ? Date.parse(begun.at) : undefined, now },
    spec: { ...spec, alarmMinutes: alarmMinutes ?? undefined },
  });
}

/** Those that call out: not begun, and their time runs out or has. The most pressing first, as they come. */
export function callingOut(bakes: readonly Bake[], now: number): Bake[] {
  const loud = new Set<BakeTimer['state']>(['soon', 'urgent', 'too-late']);
  return bakes.filter(({ bake }) => loud.has(timerOf(bake, now).state));
}
