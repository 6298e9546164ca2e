import type { manualOperations } from '@hubwright/contracts/manuals/operations';
import { material, pitch } from '@hubwright/contracts/manuals/words';
import type { Sent } from '@hubwright/contracts/operation';

type ModelInput = Sent<typeof manualOperations.addModel>;

/** A model as it is typed. */
export interface ModelDraft {
  readonly designation: string;
  readonly maker: string;
  readonly kind: ModelInput['kind'];
  readonly bladeCount: string;
  readonly material: ModelInput['material'] | null;
  readonly pitch: ModelInput['pitch'] | null;
  readonly identityCarriedBy: ModelInput['identityCarriedBy'];
}
export const emptyModel: ModelDraft = {
  designation: '',
  maker: '',
  kind: 'propeller',
  bladeCount: '',
  material: null,
  pitch: null,
  identityCarriedBy: 'hub',
};

const asChoice = <V extends string>(value: V) => ({ value, text: value.replaceAll('-', ' ') });
export const materials = material.options.map(asChoice);
export const pitches = pitch.options.map(asChoice);
export const kinds = (['propeller', 'governor'] as const).map(asChoice);
export const carriers = [
  { value: 'hub', text: 'the hub' },
  { value: 'plate', text: 'a plate' },
] as const;

/** What was typed, as the server takes it; what is missing it points at. */
export function modelToSend(draft: ModelDraft, manualId: string): ModelInput {
  const { bladeCount, ...rest } = draft;
  return {
    ...rest,
    manualId,
    ...(draft.kind === 'propeller' ? { bladeCount: bladeCount === '' ? Number.NaN : Number(bladeCount) } : {}),
  } as ModelInput;
}
