import type { FormField } from '@hubwright/contracts/manuals/revision';
import { Problem } from '@hubwright/contracts/problems';
import type { Stage } from '@hubwright/contracts/work-orders/states';
import { supervisedMeaning } from '@hubwright/contracts/work-orders/traveler-shapes';
import { diameterUnknown } from '@hubwright/rules/blades';
import { type Authorised, type SignOffToWrite, writeCountersignature, writeSignOff } from '../people/public.ts';
import { type Accepted, acceptedLimits } from './accepted-limits.ts';
import { advance } from './advance.ts';
import { type JudgedValue, judgeValues, limitsInWords, type MeasureAsked, outsideInWords } from './judge-values.ts';
import { type FormEntry, filledForm } from './process-form.ts';
import {
  authorisedFor,
  instrumentFor,
  performedOn,
  refuseOwnInspection,
  type SignedStep,
  type Signing,
} from './step-signing.ts';

/** What a person enters when signing a step. */
export interface StepEntry {
  readonly values: readonly { readonly measureId: string; readonly value: string }[];
  readonly form?: readonly FormEntry[];
  readonly instrumentId?: string | undefined;
  readonly performedAt?: string | undefined;
  readonly lateReason?: string | undefined;
  /** Who supervised a trainee, and signs too. */
  readonly supervisorId?: string | undefined;
}

export interface StepSignature {
  /** What the signature says of the step. A value outside its limits is never `pass`. */
  readonly result: 'pass' | 'fail';
  readonly meaning: string;
  readonly supersedesId?: string;
  /** The load it was done in. */
  readonly load?: { readonly number: string; readonly equipment: string };
}

export interface WrittenSignature {
  readonly signOffId: string;
  readonly travelerVersion: number;
  readonly stage: Stage;
  readonly authorisation: Record<string, unknown>;
  /** Values outside their limits, in words. */
  readonly outside: readonly string[];
}

/**
 * Signs one step: person authorised, not inspecting own work, instrument in calibration, every value measured and judged. The
 * caller has already seen to it that it is the step's turn. Throws `outside-limits` or `inside-limits` when the values do not
 * say what the signature says.
 */
export async function writeStepSignature(
  context: Signing,
  step: SignedStep,
  { entry, signature }: { entry: StepEntry; signature: StepSignature },
): Promise<WrittenSignature> {
  const { tx, entryId, newId } = context;
  const { traveler } = step;
  const day = await performedOn(context, traveler.workOrder.receivedOn, entry.performedAt);
  const authorised = await authorisedFor(context, step, { day, supervisorId: entry.supervisorId });
  await refuseOwnInspection(context, step);
  const instrument = await instrumentFor(tx, { kind: step.instrumentKind, instrumentId: entry.instrumentId, day });
  const measures = step.measures as unknown as readonly MeasureAsked[];
  refuseUnknownDiameter(step);
  const accepted = await acceptedLimits(tx, measures, instrument);
  const judged = judgeValues(accepted.measures, entry.values);
  const outside = outsideInWords(accepted.measures, judged);
  const form = filledForm(step.form as unknown as readonly FormField[], entry.form ?? []);
  refuseOtherResult(signature.result, outside);
  const signOffId = await writeSignatures(context, authorised, {
    workOrderId: traveler.workOrderId,
    subject: { kind: 'traveler-step', id: step.id },
    stepId: step.id,
    meaning: signature.meaning,
    result: signature.result,
    revisionId: traveler.revisionId,
    ...(instrument ? { instrumentId: instrument.id } : {}),
    performedAt: entry.performedAt,
    lateReason: entry.lateReason,
    content: contentOf(step, { judged, accepted, form, instrument, result: signature.result, load: signature.load }),
    ...(signature.supersedesId ? { supersedesId: signature.supersedesId } : {}),
  });
  await tx.measurement.createMany({ data: judged.map((value) => ({ ...value, id: newId(), signOffId, entryId })) });
  await endStep(context, step, { result: signature.result, performedAt: entry.performedAt });
  const { version } = await tx.traveler.update({ where: { id: traveler.id }, data: { version: { increment: 1 } } });
  return {
    signOffId,
    travelerVersion: version,
    stage: await stageAfter(context, step),
    authorisation: { ...authorised.authorisation },
    outside,
  };
}

/** Throws `diameter-unknown` for a step whose limits nobody can tell yet. */
function refuseUnknownDiameter({ title, measures }: SignedStep): void {
  const waiting = measures.filter(({ basis }) => basis === diameterUnknown).map(({ name }) => name);
  if (waiting.length > 0)
    throw new Problem('diameter-unknown', `“${title}” goes by it: ${waiting.join(', ')}`, { waiting });
}

/** The sign-off, and beside a trainee's the supervisor's: both bound to who did the work and who supervised it. */
async function writeSignatures(
  context: Signing,
  { authorisation, supervisor }: Authorised,
  signed: Omit<SignOffToWrite, 'authorisation' | 'content'> & { readonly content: object },
): Promise<string> {
  if (!supervisor) return (await writeSignOff(context, { ...signed, authorisation })).id;
  const supervision = { traineeId: context.actor.personId, supervisorId: supervisor.personId };
  const signOff = { ...signed, authorisation, content: { ...signed.content, supervision } };
  const { id } = await writeSignOff(context, signOff);
  await writeCountersignature(context, signOff, { ...supervisor, countersignsId: id, meaning: supervisedMeaning });
  return id;
}

async function endStep(
  { tx, now }: Signing,
  step: SignedStep,
  { result, performedAt }: { result: string; performedAt: string | undefined },
): Promise<void> {
  const state = result === 'pass' ? 'signed' : 'failed';
  const waitUntil = waitAfter(step, performedAt, now);
  await tx.travelerStep.update({ where: { id: step.id }, data: { state, signedAt: now, waitUntil } });
}

/** The end of the time that needs no hands, counted from the end of the work. */
function waitAfter({ waitMinutes }: SignedStep, performedAt: string | undefined, now: Date): Date | null {
  const doneAt = performedAt === undefined ? now : new Date(performedAt);
  return waitMinutes === 0 ? null : new Date(doneAt.getTime() + waitMinutes * 60_000);
}

function refuseOtherResult(result: StepSignature['result'], outside: readonly string[]): void {
  if (result === 'pass' && outside.length > 0) {
    throw new Problem('outside-limits', `Outside limits: ${outside.join('; ')}`, { outside });
  }
  if (result === 'fail' && outside.length === 0) {
    throw new Problem('inside-limits', 'No measured value is outside its limits');
  }
}

/** The first build step signed is the beginning of the build. */
async function stageAfter(context: Signing, { phase, traveler }: SignedStep): Promise<Stage> {
  const { workOrder } = traveler;
  if (phase !== 'build' || workOrder.stage !== 'in-work') return workOrder.stage as Stage;
  return (await advance(context, workOrder, 'start-build')).stage;
}

/** Everything the person saw and signed; the sign-off is bound to its hash. */
function contentOf(
  step: SignedStep,
  signed: {
    judged: readonly JudgedValue[];
    accepted: Accepted;
    form: readonly FormEntry[];
    instrument: { tag: string; calibrationDueOn: string } | undefined;
    result: string;
    load: StepSignature['load'];
  },
) {
  const { traveler } = step;
  const measures = step.measures as unknown as readonly (MeasureAsked & { basis: string | null })[];
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
    ...(signed.accepted.rule ? { acceptedBy: signed.accepted.rule } : {}),
    ...(signed.form.length > 0 ? { form: signed.form } : {}),
    instrument: signed.instrument
      ? { tag: signed.instrument.tag, calibrationDueOn: signed.instrument.calibrationDueOn }
      : null,
    values: measures.map((measure) => ({
      name: measure.name,
      limits: limitsInWords(measure),
      ...(signed.accepted.rule ? { accepted: acceptedWords(signed.accepted, measure.id) } : {}),
      ...(measure.basis ? { basis: measure.basis } : {}),
      method: measure.method,
      value: signed.judged.find(({ measureId }) => measureId === measure.id)?.value ?? null,
    })),
  };
}

function acceptedWords({ measures }: Accepted, id: string): string | null {
  const measure = measures.find((one) => one.id === id);
  return measure ? limitsInWords(measure) : null;
}
