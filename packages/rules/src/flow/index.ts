export { type ControlLimits, controlLimits, type Signal } from './control-limits.ts';
export { quantile } from './quantile.ts';
