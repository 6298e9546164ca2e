export { criticalRatio } from './critical-ratio.ts';
export { type CrostonOptions, croston } from './croston.ts';
export { findingRate, type Prior } from './finding-rate.ts';
export { pooledPrior } from './pooled-prior.ts';
export { wilson } from './wilson.ts';
