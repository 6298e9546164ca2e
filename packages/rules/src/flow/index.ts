export { type ControlLimits, controlLimits, type Signal } from './control-limits.ts';
