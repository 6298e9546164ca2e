import { findingOperations } from '@hubwright/contracts/findings/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import {
  performedAt,
  refuseHeld,
  refuseInLoad,
  requireTurn,
  type SignedStep,
  stepLocks,
  stepToSign,
  writeStepSignature,
} from '../work-orders/public.ts';
import { refuseOutsideWork, writeFinding } from './write-finding.ts';

const operation = findingOperations.failStep;

/** A value outside its limits is signed as what it is: a failed result and a finding, in one act. */
export const failStep = defineCommand(operation, {
  locks: (input, tx) => stepLocks(tx, input.stepId, input.equipmentId),
  async execute(context) {
    const { tx, input } = context;
    const step = await stepToSign(tx, input.stepId);
    const supersedesId = await signedBefore(tx, step, input.reason);
    if (supersedesId === undefined) await requireTurn(tx, step, performedAt(context));
    await refuseInLoad(tx, [step]);
    const meaning =
      supersedesId === undefined ? (operation.signs ?? '') : `Corrects an earlier sign-off: ${input.reason}`;
    const written = await writeStepSignature(context, step, {
      entry: input,
      signature: { result: 'fail', meaning, ...(supersedesId === undefined ? {} : { supersedesId }) },
    });
    const { traveler } = step;
    const { id, number } = await writeFinding(context, traveler, { found: input, stepId: step.id });
    return {
      reply: { id, version: 1, number, signOffId: written.signOffId },
      subjects: [
        { kind: 'finding', id, after: 1 },
        { kind: 'traveler', id: traveler.id, before: traveler.version, after: written.travelerVersion },
        { kind: 'work-order', id: traveler.workOrderId },
      ],
      authorisation: written.authorisation,
      facts: { number, traveler: traveler.number, step: step.title, outside: written.outside },
      ...(input.reason ? { reason: input.reason } : {}),
    };
  },
});

/** The newest sign-off of a step signed as good, when a reason is given for calling it wrong. */
async function signedBefore(tx: Tx, step: SignedStep, reason: string | undefined): Promise<string | undefined> {
  if (step.state !== 'signed' || reason === undefined) return undefined;
  refuseOutsideWork(step.traveler.workOrder);
  if (step.traveler.disposition === 'reject') {
    throw new Problem('traveler-rejected', `${step.traveler.number}: the part was rejected`);
  }
  await refuseHeld(tx, step.traveler.workOrder);
  const newest = await tx.signOff.findFirst({
    where: { stepId: step.id, countersignsId: null },
    orderBy: [{ signedAt: 'desc' }, { id: 'desc' }],
    select: { id: true },
  });
  return newest?.id;
}
