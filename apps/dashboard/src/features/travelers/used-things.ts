import type { Step } from './traveler.ts';

/** The tank or test system, and the lots of material, that a step was done with. */
export interface Used {
  readonly equipmentId: string | null;
  readonly lotIds: readonly string[];
}
export const nothingUsed: Used = { equipmentId: null, lotIds: [] };

export function usedInput({ equipmentId, lotIds }: Used): { equipmentId?: string; lotIds: string[] } {
  return { ...(equipmentId === null ? {} : { equipmentId }), lotIds: [...lotIds] };
}

/** What is not named yet, in words; empty when nothing is left. */
export function usedLeft({ equipmentKind, materials }: Step, { equipmentId, lotIds }: Used): string {
  const left = [
    ...(equipmentKind && equipmentId === null ? [`the ${equipmentKind.replaceAll('-', ' ')}`] : []),
    ...(materials.length > 0 && lotIds.length === 0 ? ['the lots of material'] : []),
  ];
  return left.length === 0 ? '' : `Not named yet: ${left.join(', ')}.`;
}
