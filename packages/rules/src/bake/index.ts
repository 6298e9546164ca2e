export { type BakeState, type BakeTimer, bakeTimer } from './bake-timer.ts';
export { type BakeSpec, type BakeVerdict, judgeBake, lateBy } from './judge-bake.ts';
export { sayBake } from './say-bake.ts';
