import type { Tx } from './client.ts';

/**
 * For the rest of this transaction tables are joined whole. Rows written a moment ago are not in the statistics: the planner
 * takes twenty thousand for one, and looks through all of them once for each.
 */
export async function joinWhole(tx: Tx): Promise<void> {
  await tx.$executeRaw`SET LOCAL enable_nestloop = off`;
}
