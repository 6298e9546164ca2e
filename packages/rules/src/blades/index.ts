export { arrangeBlades, type BladeArrangement } from './arrange.ts';
export { type ChartPoint, mostBend } from './bend-chart.ts';
export {
  bandFault,
  diameterUnknown,
  type LimitsNow,
  type LimitTable,
  limitsNow,
  type PartCondition,
  type Sides,
} from './condition.ts';
export { judgeSet, opposite, type SetBlade, type Spread, type SpreadLimit, takenOff } from './set.ts';
