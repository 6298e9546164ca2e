export { type AcceptedPoint, acceptedPoints, type BenchDoubt } from './accepted.ts';
export {
  type BenchUnit,
  benchUnits,
  inUnit,
  type JudgedReading,
  judgeReading,
  oilComplaint,
  type PointLimit,
  unitsBeside,
} from './judge-reading.ts';
export { engineSpeed, governorSpeed } from './speed.ts';
export { type BenchEvent, type PointStanding, type PointState, type RunStanding, runStanding } from './standing.ts';
