import type { Process } from '@hubwright/contracts/people/operations';
import { Problem } from '@hubwright/contracts/problems';
import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';

const operation = equipmentOperations.answerDoubt;

/** An inspector answers for a part with a reason and a signature; it does not go before the release otherwise. */
export const answerDoubt = defineCommand(operation, {
  locks: async (input, tx) => {
    const doubt = await tx.equipmentDoubt.findUnique({ where: { id: input.doubtId }, select: { workOrderId: true } });
    return doubt ? [`work-order:${doubt.workOrderId}`] : [];
  },
  async execute(context) {
    const { tx, input, actor, now, today } = context;
    const { doubt, workOrder, equipment, reading } = await answerable(context);
    const need = { process: equipment.process as Process, level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const { decision, reason } = input;
    const version = doubt.version + 1;
    await tx.equipmentDoubt.update({
      where: { id: doubt.id },
      data: { decision, reason, decidedBy: actor.personId, decidedAt: now, version },
    });
    const { quantity, value, unit } = reading;
    await writeSignOff(context, {
      workOrderId: workOrder.id,
      subject: { kind: 'equipment-doubt', id: doubt.id },
      meaning: operation.signs ?? '',
      result: 'pass',
      authorisation,
      revisionId: workOrder.revisionId,
      content: {
        ...{ workOrder: workOrder.number, equipment: equipment.code, read: { quantity, value, unit } },
        ...{ signOff: doubt.signOffId, decision, reason },
      },
    });
    return {
      reply: { id: doubt.id, version },
      subjects: [
        { kind: 'work-order', id: workOrder.id },
        { kind: 'equipment', id: equipment.id },
      ],
      authorisation: { ...authorisation },
      facts: { doubt: doubt.id, signOff: doubt.signOffId, decision },
      reason,
    };
  },
});

async function answerable({ tx, input, expectedVersion }: Context<typeof operation>) {
  const doubt = found(await tx.equipmentDoubt.findUnique({ where: { id: input.doubtId } }), 'This part');
  sameVersion(doubt.version, expectedVersion);
  if (doubt.decision !== null)
    throw new Problem('doubt-answered', `It was answered: ${doubt.decision.replaceAll('-', ' ')}`);
  const workOrder = await tx.workOrder.findUniqueOrThrow({ where: { id: doubt.workOrderId } });
  if (input.decision === 'customer-told' && !workOrder.releasedAt)
    throw new Problem('unit-not-released', `${workOrder.number} has not been released`);
  if (input.decision === 'finding-raised') await refuseWithoutFinding(tx, doubt);
  const equipment = await tx.equipment.findUniqueOrThrow({ where: { id: doubt.equipmentId } });
  const reading = await tx.equipmentReading.findUniqueOrThrow({ where: { id: doubt.readingId } });
  return { doubt, workOrder, equipment, reading };
}

/** What is said to be done about it must be on record: a finding on the part’s traveler since it came into doubt. */
async function refuseWithoutFinding(
  tx: Context<typeof operation>['tx'],
  { signOffId, raisedAt }: { signOffId: string; raisedAt: Date },
): Promise<void> {
  const { step } = await tx.signOff.findUniqueOrThrow({
    where: { id: signOffId },
    select: { step: { select: { travelerId: true, traveler: { select: { number: true } } } } },
  });
  const raised = await tx.finding.findFirst({
    where: { travelerId: step?.travelerId ?? '', raisedAt: { gte: raisedAt } },
    select: { id: true },
  });
  if (!raised) throw new Problem('finding-not-raised', `No finding was raised on ${step?.traveler.number} since`);
}
