export { type BakeSpec, type BakeVerdict, type ChartReading, judgeBake } from './judge-bake.ts';
export { sayBake } from './say-bake.ts';
