export { carriedOver, continuedLine } from './continued-line.ts';
export {
  type CountedPiece,
  type Doubt,
  type ExplainedTime,
  type ItemTimes,
  type ItemTimesInput,
  itemTimes,
  type Paper,
} from './item-times.ts';
export { type MeterPoint, type OutOfLine, outOfLine } from './meter-line.ts';
export {
  type Away,
  type InAssembly,
  type MeterChange,
  type MeterReading,
  type OnAircraft,
  type Piece,
  piecesOfAssembly,
} from './pieces.ts';
export { awayOnItsOwn, type OnRecord, type PlacedPiece, piecesThrough, type Sat } from './through-assemblies.ts';
export type { Installation, Reading, Tenths, TimesInput } from './times-input.ts';
export { type Time, type UnitTimes, unitsInTime } from './units-in-time.ts';
