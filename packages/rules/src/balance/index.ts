export { correction } from './correction.ts';
export { leastSquares, type SensorReading, twoPlane } from './planes.ts';
export { splitBetween } from './split.ts';
export type { Vibration, Weight } from './vector.ts';
export { combine, moveRadius, permissibleUnbalance } from './weights.ts';
export { correctionWithoutPhase } from './without-phase.ts';
