export { closeKits, kitsOf, openItems, reopenKits } from './closing.ts';
export { addDemandFromFinding } from './finding-demand.ts';
export { freePromises } from './free-promises.ts';
export { makeKit as explodeKit } from './make-kit.ts';
export { withdrawDemand } from './withdraw-demand.ts';
