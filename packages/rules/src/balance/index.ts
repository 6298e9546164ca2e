export { correction } from './correction.ts';
export { type Filling, fillPlaces, type Piece, type Place } from './hardware.ts';
export { leastSquares, type SensorReading, twoPlane } from './planes.ts';
export { type BalanceRun, changeFor, readingWith, repeatScatter, type SpeedAnswer, surpriseOf } from './series.ts';
export { splitBetween } from './split.ts';
export type { Vibration, Weight } from './vector.ts';
export { combine, moveRadius, permissibleUnbalance } from './weights.ts';
export { correctionWithoutPhase } from './without-phase.ts';
