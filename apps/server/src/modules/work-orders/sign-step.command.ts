import { Problem } from '@hubwright/contracts/problems';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { finishEvaluation } from './finish-evaluation.ts';
import { performedAt, refuseInLoad, requireTurn, stepLocks, stepToSign } from './step-signing.ts';
import { writeStepSignature } from './write-step-signature.ts';

const operation = travelerOperations.signStep;

/** One generic signature of a step, measured or not, by the person who did or inspected it. */
export const signStep = defineCommand(operation, {
  locks: (input, tx) => stepLocks(tx, input.stepId, input.equipmentId),
  async execute(context) {
    const { tx, input } = context;
    const step = await stepToSign(tx, input.stepId);
    if (step.peening !== null)
      throw new Problem('peened-in-lots', `“${step.title}” is signed with its lot`, { step: step.title });
    await requireTurn(tx, step, performedAt(context));
    await refuseInLoad(tx, [step]);
    const written = await writeStepSignature(context, step, {
      entry: input,
      signature: { result: 'pass', meaning: operation.signs ?? '' },
    });
    const { traveler } = step;
    const stage = (await finishEvaluation(context, traveler.workOrderId)) ?? written.stage;
    return {
      reply: {
        id: step.id,
        version: written.travelerVersion,
        signOffId: written.signOffId,
        state: 'signed' as const,
        travelerId: traveler.id,
        stage,
      },
      subjects: [
        { kind: 'traveler', id: traveler.id, before: traveler.version, after: written.travelerVersion },
        { kind: 'work-order', id: traveler.workOrderId },
        ...written.back
          .filter(({ id }) => id !== traveler.id)
          .map(({ id, before }) => ({ kind: 'traveler', id, before, after: before + 1 })),
      ],
      authorisation: written.authorisation,
      facts: { traveler: traveler.number, step: step.title, signOff: written.signOffId, stage },
    };
  },
});
