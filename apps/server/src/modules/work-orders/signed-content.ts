import type { MaterialUsed } from '../inventory/public.ts';
import type { EquipmentUsed } from '../processes/public.ts';
import type { Accepted } from './accepted-limits.ts';
import { type JudgedValue, limitsInWords, type MeasureAsked } from './judge-values.ts';
import type { FormEntry } from './process-form.ts';
import type { JudgedSheet } from './sheets/sheet.ts';
import type { SignedStep } from './step-signing.ts';

/** What a signature of a step says beside the step itself. */
export interface SignedContent {
  readonly judged: readonly JudgedValue[];
  readonly accepted: Accepted;
  readonly sheet: JudgedSheet | undefined;
  readonly form: readonly FormEntry[];
  /** The tank or test system with the results it was fit by, and the lots of material used. */
  readonly equipment: EquipmentUsed | undefined;
  readonly lots: readonly MaterialUsed[];
  readonly instrument: { readonly tag: string; readonly calibrationDueOn: string } | undefined;
  readonly result: string;
  /** The load it was done in. */
  readonly load?: { readonly number: string; readonly equipment: string } | undefined;
  /** What a failed test opens again. */
  readonly reopens?: object | undefined;
}

/** Everything the person saw and signed; the sign-off is bound to its hash. */
export function contentOf(step: SignedStep, signed: SignedContent) {
  const { traveler } = step;
  return {
    workOrder: traveler.workOrder.number,
    traveler: traveler.number,
    part: { class: traveler.partClass, position: traveler.position, itemId: traveler.itemId },
    revisionId: traveler.revisionId,
    step: {
      id: step.id,
      title: step.title,
      instruction: step.instruction,
      process: step.process,
      level: step.level,
      fact: step.fact,
      tools: step.tools,
      waitMinutes: step.waitMinutes,
      attempt: step.attempt,
    },
    result: signed.result,
    ...(signed.load ? { load: signed.load } : {}),
    ...(signed.reopens ? { reopens: signed.reopens } : {}),
    ...(signed.accepted.rule ? { acceptedBy: signed.accepted.rule } : {}),
    ...(signed.sheet ? { sheet: signed.sheet } : {}),
    ...(signed.equipment ? { equipment: signed.equipment } : {}),
    ...(signed.lots.length > 0 ? { lots: signed.lots } : {}),
    ...(signed.form.length > 0 ? { form: signed.form } : {}),
    instrument: signed.instrument
      ? { tag: signed.instrument.tag, calibrationDueOn: signed.instrument.calibrationDueOn }
      : null,
    values: valuesOf(step, signed),
  };
}

/** Each value with the limits of the manual and, where the shop's rule narrows them, those it was accepted by. */
function valuesOf(step: SignedStep, { judged, accepted }: SignedContent) {
  const measures = step.measures as unknown as readonly (MeasureAsked & { basis: string | null })[];
  return measures.map((measure, index) => {
    const narrowed = accepted.rule && accepted.measures[index];
    return {
      name: measure.name,
      limits: limitsInWords(measure),
      ...(narrowed ? { accepted: limitsInWords(narrowed) } : {}),
      ...(measure.basis ? { basis: measure.basis } : {}),
      method: measure.method,
      value: judged.find(({ measureId }) => measureId === measure.id)?.value ?? null,
    };
  });
}
