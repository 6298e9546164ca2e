import { findingOperations } from '@hubwright/contracts/findings/operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { kitsOf } from '../kits/public.ts';
import { type HeldAuthorisation, requireAuthorisation } from '../people/public.ts';
import { finishEvaluation, writeSignOff } from '../work-orders/public.ts';
import { carryOut, type PartAsked, partsDemanded, travelerDisposition } from './carry-out.ts';
import { type DecidableFinding, decidableFinding, refuseImpossible } from './decidable.ts';

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
    const finding = await decidableFinding(tx, input.findingId, context.expectedVersion);
    const { traveler, workOrderId } = finding;
    const need = { process: 'dimensional-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    refuseImpossible(finding, input);
    const parts = await partsDemanded(tx, finding, input);
    const stepIds = await carryOut(context, finding, { ...input, parts });
    const overAndAbove = isOverAndAbove(finding, { labourMinor: input.labourMinor, parts });
    await writeDecision(context, finding, { authorisation, parts, overAndAbove });
    await finishEvaluation(context, workOrderId);
    const { stage } = await tx.workOrder.findUniqueOrThrow({ where: { id: workOrderId }, select: { stage: true } });
    const { disposition } = input;
    const version = finding.version + 1;
    return {
      reply: { id: finding.id, version, disposition, overAndAbove, stepIds, stage },
      subjects: [
        { kind: 'finding', id: finding.id, before: finding.version, after: version },
        { kind: 'traveler', id: traveler.id, before: traveler.version, after: traveler.version + 1 },
        { kind: 'work-order', id: workOrderId },
      ],
      authorisation: { ...authorisation },
      facts: { number: finding.number, disposition, overAndAbove, parts, steps: stepIds.length, stage },
    };
  },
});

/** What is found after the firm quote went out is over and above it, if it costs anything. */
function isOverAndAbove(
  { workOrder }: DecidableFinding,
  cost: { labourMinor: number; parts: readonly unknown[] },
): boolean {
  const quoted = ['quote-sent', 'quote-silent', 'approved'].includes(workOrder.consent);
  return quoted && (cost.labourMinor > 0 || cost.parts.length > 0);
}

async function writeDecision(
  context: Deciding,
  finding: DecidableFinding,
  made: { authorisation: HeldAuthorisation; parts: readonly PartAsked[]; overAndAbove: boolean },
): Promise<void> {
  const { tx, input } = context;
  const { traveler } = finding;
  const { disposition, labourMinor } = input;
  const { id: signOffId } = await writeSignOff(context, {
    workOrderId: finding.workOrderId,
    subject: { kind: 'finding', id: finding.id },
    meaning: operation.signs ?? '',
    result: disposition,
    authorisation: made.authorisation,
    revisionId: traveler.revisionId,
    content: contentOf(finding, input, made.parts),
  });
  const decided = { disposition, dispositionNote: input.note, signOffId, labourMinor, overAndAbove: made.overAndAbove };
  await tx.finding.update({ where: { id: finding.id }, data: { ...decided, version: { increment: 1 } } });
  const gravest = travelerDisposition(traveler.disposition, disposition);
  await tx.traveler.update({
    where: { id: traveler.id },
    data: { disposition: gravest, version: { increment: 1 } },
  });
}

/** What the inspector saw and decided; the signature is bound to it. */
function contentOf(finding: DecidableFinding, input: Deciding['input'], parts: readonly PartAsked[]) {
  const { number, area, damage, place, description, traveler } = finding;
  const { disposition, note, steps, labourMinor } = input;
  return {
    finding: { number, area, damage, place, description },
    part: {
      traveler: traveler.number,
      class: traveler.partClass,
      position: traveler.position,
      itemId: traveler.itemId,
    },
    decision: { disposition, note, steps, parts, labourMinor },
  };
}
