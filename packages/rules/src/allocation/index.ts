export { type CompleteKits, completeKits } from './complete-kits.ts';
export { type FillKits, fillKits, type KitToFill } from './fill-kits.ts';
export { handOut } from './hand-out.ts';
export type { Kit } from './model.ts';
