export type { Installation, Reading, Tenths, TimesInput } from './times-input.ts';
export { type Time, type UnitTimes, unitsInTime } from './units-in-time.ts';
