export { type CompleteKits, completeKits } from './complete-kits.ts';
export type { Kit } from './model.ts';
