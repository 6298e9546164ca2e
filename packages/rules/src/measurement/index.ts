export { type GuardBand, type GuardBandInput, type GuardBandMethod, guardBand } from './guard-band.ts';
