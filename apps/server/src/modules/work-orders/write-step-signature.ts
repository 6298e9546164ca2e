import type { FormField } from '@hubwright/contracts/manuals/revision';
import { Problem } from '@hubwright/contracts/problems';
import type { SheetEntry } from '@hubwright/contracts/work-orders/sheet-entries';
import type { Stage } from '@hubwright/contracts/work-orders/states';
import { supervisedMeaning } from '@hubwright/contracts/work-orders/traveler-shapes';
import { diameterUnknown } from '@hubwright/rules/blades';
import { requireMaterials } from '../inventory/public.ts';
import { type Authorised, type SignOffToWrite, writeCountersignature, writeSignOff } from '../people/public.ts';
import { requireEquipment } from '../processes/public.ts';
import { acceptedLimits } from './accepted-limits.ts';
import { advance } from './advance.ts';
import { balanceAgain, type CameBack } from './balance-again.ts';
import { judgeValues, type MeasureAsked, outsideInWords } from './judge-values.ts';
import { type FormEntry, filledForm } from './process-form.ts';
import { curedFrom } from './sheets/cure.ts';
import { judgedSheet } from './sheets/sheet.ts';
import { contentOf } from './signed-content.ts';
import {
  authorisedFor,
  instrumentFor,
  performedAt,
  performedOn,
  refuseOwnInspection,
  type SignedStep,
  type Signing,
} from './step-signing.ts';

/** What a person enters when signing a step. */
export interface StepEntry {
  readonly values: readonly { readonly measureId: string; readonly value: string }[];
  readonly form?: readonly FormEntry[];
  readonly sheet?: SheetEntry | undefined;
  readonly instrumentId?: string | undefined;
  readonly equipmentId?: string | undefined;
  readonly lotIds?: readonly string[];
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
  /** What a failed test opens again, and why. */
  readonly reopens?: { readonly reason: string; readonly repeat: readonly string[]; readonly seals: readonly string[] };
}

export interface WrittenSignature {
  readonly signOffId: string;
  readonly travelerVersion: number;
  readonly stage: Stage;
  readonly authorisation: Record<string, unknown>;
  /** Values outside their limits, in words. */
  readonly outside: readonly string[];
  /** Travelers on which it brought steps back. */
  readonly back: readonly CameBack[];
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
  const used = await usedOf(context, step, { entry, day });
  refuseUnknownDiameter(step);
  const entered = await enteredOf(context, step, { entry, instrument: used.instrument });
  refuseOtherResult(signature.result, entered.outside);
  const signOffId = await writeSignatures(context, authorised, {
    workOrderId: traveler.workOrderId,
    subject: { kind: 'traveler-step', id: step.id },
    ...{ stepId: step.id, meaning: signature.meaning, result: signature.result, revisionId: traveler.revisionId },
    ...used.ids,
    ...{ performedAt: entry.performedAt, lateReason: entry.lateReason },
    content: contentOf(step, { ...entered, ...used, ...signature }),
    ...(signature.supersedesId ? { supersedesId: signature.supersedesId } : {}),
  });
  await tx.measurement.createMany({
    data: entered.judged.map((value) => ({ ...value, id: newId(), signOffId, entryId })),
  });
  await endStep(context, step, { result: signature.result, performedAt: entry.performedAt });
  const back = await undoneBy(context, step, signature);
  const { version } = await tx.traveler.update({ where: { id: traveler.id }, data: { version: { increment: 1 } } });
  return {
    signOffId,
    travelerVersion: version,
    stage: await stageAfter(context, step),
    authorisation: { ...authorised.authorisation },
    outside: entered.outside,
    back,
  };
}

/** Instrument, tank or test system, and lots of material used, each fit at the moment of the work. */
async function usedOf({ tx, now }: Signing, step: SignedStep, { entry, day }: { entry: StepEntry; day: string }) {
  const moment = { at: performedAt({ now, input: entry }), day };
  const { instrumentId, equipmentId, lotIds = [] } = entry;
  const instrument = await instrumentFor(tx, { kind: step.instrumentKind, instrumentId, day });
  const equipment = await requireEquipment(tx, { kind: step.equipmentKind, equipmentId }, moment);
  // What was laid into a cure is judged by when it was cured from: it stays out of the freezer for good.
  const lots = await requireMaterials(
    tx,
    { asked: step.materials, lotIds },
    { day, at: curedFrom(entry) ?? moment.at },
  );
  const ids = {
    ...(instrument ? { instrumentId: instrument.id } : {}),
    ...(equipment ? { equipmentId: equipment.id } : {}),
    lotIds: lots.map(({ id }) => id),
  };
  return { instrument, equipment, lots, ids };
}

/** What was entered, the readings judged by the limits they are accepted by, and what lies outside of them, in words. */
async function enteredOf(
  context: Signing,
  step: SignedStep,
  { entry, instrument }: { entry: StepEntry; instrument: Awaited<ReturnType<typeof instrumentFor>> },
) {
  const printed = step.measures as unknown as readonly MeasureAsked[];
  const accepted = await acceptedLimits(context.tx, printed, instrument);
  const judged = judgeValues(accepted.measures, entry.values, printed);
  const sheet = await judgedSheet(context, step, { sheet: entry.sheet, instrument, lotIds: entry.lotIds ?? [] });
  const outside = [...outsideInWords(accepted.measures, judged), ...(sheet?.reasons ?? [])];
  const form = filledForm(step.form as unknown as readonly FormField[], entry.form ?? []);
  return { accepted, judged, sheet, form, outside };
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

/** Paint, plating of faces and the like put on after the static balance undo it; a corrected entry puts nothing on. */
async function undoneBy(
  context: Signing,
  { process, title, traveler }: SignedStep,
  { result, supersedesId }: StepSignature,
): Promise<CameBack[]> {
  if (process !== 'coating' || result !== 'pass' || supersedesId !== undefined) return [];
  const workOrder = await context.tx.workOrder.findUniqueOrThrow({ where: { id: traveler.workOrderId } });
  return balanceAgain(context, workOrder, title);
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
