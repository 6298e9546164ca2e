export { type ExplodedKitList, type ExplodedLine, explodeKitList, type ListLine } from './explode.ts';
export { serialInRange } from './serial-range.ts';
