export { arrivalShares, type DueRange } from './arrival-shares.ts';
export { foresee } from './foresee.ts';
export type { ForeseeInput, ForeseenKind, ForeseenModel, UnitDue, UnitUnseen } from './foresee-input.ts';
export { type PartRate, type PartRecord, partRates, toldRate } from './part-rates.ts';
export type { Foreseen, Foresight } from './plan.ts';
export { type Share, sharesOf } from './shares-of.ts';
export { wholePieces } from './whole-pieces.ts';
