export {
  type CuredMaterial,
  type CureReading,
  type CureSegment,
  type CureSpec,
  type CureVerdict,
  judgeCure,
} from './judge-cure.ts';
export { sayCure } from './say-cure.ts';
