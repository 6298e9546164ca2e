export { correction } from './correction.ts';
export { type Filling, fillPlaces, type Piece, type Place } from './hardware.ts';
export { leastSquares, type SensorReading, twoPlane } from './planes.ts';
export { changeFor, didNothing, readingWith, repeatScatter, type SpeedAnswer, surpriseOf } from './series.ts';
export type { BalanceRun, PlaneWeight } from './series-fit.ts';
export { splitBetween } from './split.ts';
export type { StaticPiece, StaticPlace } from './static-places.ts';
export { proposeStatic, type StaticFilling } from './static-proposal.ts';
export {
  adviseStatic,
  judgeStatic,
  limitText,
  type StaticAdvice,
  type StaticEntry,
  type StaticPlaced,
  type StaticReading,
  type StaticSpec,
  type StaticVerdict,
} from './static-sheet.ts';
export { sayStatic } from './static-words.ts';
export type { Vibration, Weight } from './vector.ts';
export { combine, moveRadius, permissibleUnbalance } from './weights.ts';
export { correctionWithoutPhase } from './without-phase.ts';
