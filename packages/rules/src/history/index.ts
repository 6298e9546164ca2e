export { criticalRatio } from './critical-ratio.ts';
export { type CrostonOptions, croston } from './croston.ts';
export { wilson } from './wilson.ts';
