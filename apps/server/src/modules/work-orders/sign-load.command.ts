import { Problem } from '@hubwright/contracts/problems';
import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import type { Subject } from '../../platform/command/command.ts';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { finishEvaluation } from './finish-evaluation.ts';
import { loadLocks, openLoad } from './loads.ts';
import { filledForm, formOf } from './process-form.ts';
import { judgedSheet } from './sheets/sheet.ts';
import { performedAt, requireTurn, type SignedStep, stepToSign } from './step-signing.ts';
import { type WrittenSignature, writeStepSignature } from './write-step-signature.ts';

const operation = loadOperations.signLoad;
type Signed = { readonly step: SignedStep; readonly written: WrittenSignature };

/** One act and one entry signs the step of every part; each traveler keeps a sign-off of its own that names the load. */
export const signLoad = defineCommand(operation, {
  locks: (input, tx) => loadLocks(tx, input.loadId),
  async execute(context) {
    const { tx, input, now, expectedVersion } = context;
    const load = await openLoad(tx, input.loadId, expectedVersion);
    const steps = await tx.travelerStep.findMany({ where: { id: { in: load.parts.map(({ stepId }) => stepId) } } });
    filledForm(formOf(steps), input.form);
    await refuseBadParts(context, load);
    const signed: Signed[] = [];
    for (const { stepId } of load.parts) signed.push(await signPart(context, stepId, load));
    await tx.loadPart.updateMany({ where: { loadId: load.id, open: true }, data: { open: false } });
    const { version } = await tx.load.update({
      where: { id: load.id },
      data: { state: 'signed', endedAt: now, version: { increment: 1 } },
    });
    const workOrders = [...new Set(signed.map(({ step }) => step.traveler.workOrderId))];
    for (const id of workOrders) await finishEvaluation(context, id);
    return {
      reply: { id: load.id, version, signOffIds: signed.map(({ written }) => written.signOffId) },
      subjects: [
        { kind: 'load', id: load.id, before: load.version, after: version },
        ...signed.map(travelerSubject),
        ...workOrders.map((id) => ({ kind: 'work-order', id })),
      ],
      ...(signed[0] ? { authorisation: signed[0].written.authorisation } : {}),
      facts: {
        number: load.number,
        equipment: load.equipment,
        travelers: signed.map(({ step }) => step.traveler.number),
      },
    };
  },
});

/**
 * Each part of an oven load is judged by its own plating. Throws `outside-limits` that names every part which is not good and why:
 * it is taken out and failed on its own traveler, and the rest are signed as good.
 */
async function refuseBadParts(
  context: Context<typeof operation>,
  { number, parts }: { number: string; parts: readonly { stepId: string }[] },
): Promise<void> {
  const { tx, input } = context;
  if (!input.sheet) return;
  const outside: string[] = [];
  for (const { stepId } of parts) {
    const step = await stepToSign(tx, stepId);
    const judged = await judgedSheet(context, step, { sheet: input.sheet, instrument: undefined, lotIds: [] });
    if (judged && judged.reasons.length > 0) outside.push(`${step.traveler.number}: ${judged.reasons.join(' ')}`);
  }
  if (outside.length > 0)
    throw new Problem('outside-limits', `Not good in ${number}: ${outside.join('; ')}`, { outside });
}

async function signPart(
  context: Context<typeof operation>,
  stepId: string,
  load: { number: string; equipment: string; equipmentId: string | null },
): Promise<Signed> {
  const { tx, input } = context;
  const step = await stepToSign(tx, stepId);
  await requireTurn(tx, step, performedAt(context));
  const written = await writeStepSignature(context, step, {
    entry: {
      ...input,
      values: [],
      equipmentId: load.equipmentId ?? undefined,
      form: input.form.filter(({ name }) => formOf([step]).some((one) => one.name === name)),
    },
    signature: {
      result: 'pass',
      meaning: operation.signs ?? '',
      load: { number: load.number, equipment: load.equipment },
    },
  });
  return { step, written };
}

function travelerSubject({ step: { traveler }, written }: Signed): Subject {
  return { kind: 'traveler', id: traveler.id, before: traveler.version, after: written.travelerVersion };
}
