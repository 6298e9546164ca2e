export { faultWords, MeterFacts, type Said } from './meter-facts.ts';
export { figureShown } from './meter-figure.ts';
export { refuseFuture, refuseOutOfLine } from './meter-points.ts';

export {
  addReadings,
  type JudgedReading,
  judgeReadings,
  type ReadingFault,
  type SaidReading,
  writeReadings,
} from './readings-batch.ts';
