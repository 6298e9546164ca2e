import { type FillKits, fillKits, type KitToFill } from '@hubwright/rules/allocation';

export interface FillQuestion {
  readonly kits: readonly KitToFill[];
  readonly lots: Readonly<Record<string, number>>;
  /** Time to search; then the best found is answered with its bound. */
  readonly ms: number;
}

/** Which kits to finish from the shelf, computed off the request thread. */
export default function run({ kits, lots, ms }: FillQuestion): FillKits {
  return fillKits({ kits, lots, budget: { ms, now: () => performance.now() } });
}
