export { closeKits, kitsOf, openItems, reopenKits } from './closing.ts';
export { addDemandFromFinding } from './finding-demand.ts';
export { freePromises } from './free-promises.ts';
export { makeKit as explodeKit } from './make-kit.ts';
export { piecesOnUnit } from './pieces-on-unit.ts';
export { applyKitRebase, planKitRebase, rebaseLocks } from './rebase-kits.ts';
export type { KitDifference } from './rebase-plan.ts';
export { withdrawDemand } from './withdraw-demand.ts';
