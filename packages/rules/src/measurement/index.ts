export { accuracyRatio, type CalibrationPoint, judgeCalibration } from './calibration.ts';
export { type GuardBand, type GuardBandInput, type GuardBandMethod, guardBand } from './guard-band.ts';
