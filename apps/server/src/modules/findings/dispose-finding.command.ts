import { type Damage, mayRepair } from '@hubwright/contracts/findings/areas';
import { findingOperations } from '@hubwright/contracts/findings/operations';
import type { PartClass } from '@hubwright/contracts/manuals/words';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { kitsOf } from '../kits/public.ts';
import { requireCurrentRevision } from '../manuals/public.ts';
import { requireAuthorisation } from '../people/public.ts';
import { finishEvaluation, writeSignOff } from '../work-orders/public.ts';
import { carryOut, partsDemanded, travelerDisposition } from './carry-out.ts';
import { refuseOutsideWork } from './write-finding.ts';

const operation = findingOperations.disposeFinding;
type Deciding = Context<typeof operation>;

/** The decision on a finding is a signature. It adds steps, parts and money, or ends the part's way. */
export const disposeFinding = defineCommand(operation, {
  async locks(input, tx) {
    const finding = await tx.finding.findUnique({ where: { id: input.findingId }, select: { workOrderId: true } });
    return finding ? [`work-order:${finding.workOrderId}`, ...(await kitsOf(tx, finding.workOrderId))] : [];
  },
  async execute(context) {
    const { tx, input, actor, today } = context;
    const finding = await decidable(context);
    const { traveler, workOrder } = finding;
    const authorisation = await requireAuthorisation(tx, actor, {
      process: 'dimensional-inspection',
      level: 'inspect',
      today,
    });
    await refuseImpossible(context, finding);
    const parts = await partsDemanded(tx, finding, input);
    const stepIds = await carryOut(context, finding, { ...input, parts });
    // What is found after the firm quote went out is over and above it, if it costs anything.
    const costs = input.labourMinor > 0 || parts.length > 0;
    const overAndAbove = costs && ['quote-sent', 'quote-silent', 'approved'].includes(workOrder.consent);
    const { id: signOffId } = await writeSignOff(context, {
      workOrderId: workOrder.id,
      subject: { kind: 'finding', id: finding.id },
      meaning: operation.signs ?? '',
      result: input.disposition,
      authorisation,
      revisionId: traveler.revisionId,
      content: {
        finding: {
          number: finding.number,
          area: finding.area,
          damage: finding.damage,
          place: finding.place,
          description: finding.description,
        },
        part: {
          traveler: traveler.number,
          class: traveler.partClass,
          position: traveler.position,
          itemId: traveler.itemId,
        },
        decision: {
          disposition: input.disposition,
          note: input.note,
          steps: input.steps,
          parts,
          labourMinor: input.labourMinor,
        },
      },
    });
    const version = finding.version + 1;
    await tx.finding.update({
      where: { id: finding.id },
      data: {
        disposition: input.disposition,
        dispositionNote: input.note,
        signOffId,
        labourMinor: input.labourMinor,
        overAndAbove,
        version,
      },
    });
    const disposition = travelerDisposition(traveler.disposition, input.disposition);
    await tx.traveler.update({ where: { id: traveler.id }, data: { disposition, version: { increment: 1 } } });
    await finishEvaluation(context, workOrder.id);
    const { stage } = await tx.workOrder.findUniqueOrThrow({ where: { id: workOrder.id }, select: { stage: true } });
    return {
      reply: { id: finding.id, version, disposition: input.disposition, overAndAbove, stepIds, stage },
      subjects: [
        { kind: 'finding', id: finding.id, before: finding.version, after: version },
        { kind: 'traveler', id: traveler.id, before: traveler.version, after: traveler.version + 1 },
        { kind: 'work-order', id: workOrder.id },
      ],
      authorisation: { ...authorisation },
      facts: {
        number: finding.number,
        disposition: input.disposition,
        overAndAbove,
        parts,
        steps: stepIds.length,
        stage,
      },
    };
  },
});

async function decidable({ tx, input, expectedVersion }: Deciding) {
  const finding = found(
    await tx.finding.findUnique({
      where: { id: input.findingId },
      include: { traveler: { include: { steps: true } }, workOrder: true },
    }),
    'This finding',
  );
  sameVersion(finding.version, expectedVersion);
  if (finding.disposition) throw new Problem('finding-decided', `${finding.number} is decided: ${finding.disposition}`);
  refuseOutsideWork(finding.workOrder);
  await requireCurrentRevision(tx, finding.traveler.revisionId);
  return finding;
}

async function refuseImpossible({ input }: Deciding, finding: Awaited<ReturnType<typeof decidable>>): Promise<void> {
  const { traveler } = finding;
  if (
    input.disposition === 'repair' &&
    !mayRepair(traveler.partClass as PartClass, finding.area, finding.damage as Damage)
  ) {
    throw new Problem(
      'repair-not-allowed',
      `${finding.number}: a deformed hub in a critical area is rejected, never repaired`,
      {
        area: finding.area,
      },
    );
  }
  const failed = traveler.steps.find(({ id, state }) => id === finding.stepId && state === 'failed');
  if (input.disposition === 'serviceable' && failed) {
    throw new Problem('still-outside-limits', `“${failed.title}” was measured outside its limits`, {
      step: failed.title,
    });
  }
  const openRepair = traveler.steps.some(({ state, phase }) => state === 'open' && phase === 'repair');
  if (input.disposition === 'repair' && input.steps.length === 0 && !failed && !openRepair) {
    throw new Problem('repair-steps-missing', `Name the steps that repair ${finding.number}`, {}, [
      { pointer: '/steps', detail: 'Name at least one step' },
    ]);
  }
}
