export { type Acceptance, acceptance } from './acceptance.ts';
export { accuracyRatio, type CalibrationPoint, judgeCalibration } from './calibration.ts';
export { fProbability } from './f-probability.ts';
export { type AverageAndRange, averageAndRange, type StudyAnova, type StudySpread, studyAnova } from './gauge-study.ts';
export { type GuardBand, type GuardBandInput, type GuardBandMethod, guardBand } from './guard-band.ts';
export type { StudyCell } from './study-cells.ts';
