import type { Disposition } from '@hubwright/contracts/findings/areas';
import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import { type HeldAuthorisation, requireAuthorisation, writeSignOff } from '../people/public.ts';
import { finishEvaluation } from '../work-orders/public.ts';
import { carryOut, gravestOf, type PartAsked, partsDemanded } from './carry-out.ts';
import { type DecidableFinding, refuseImpossible, refuseTooHeavy } from './decidable.ts';
import type { AskedStep } from './repair-steps.ts';

/** What the inspector says. */
interface Decision {
  readonly disposition: Disposition;
  readonly note: string;
  readonly steps: readonly AskedStep[];
  readonly parts: readonly PartAsked[];
  readonly labourMinor: number;
}

/** The decision with the sentence it is signed under, and the signature it takes the place of. */
export interface SignedDecision extends Decision {
  readonly meaning: string;
  readonly supersedesId?: string;
}

/** Throws `not-authorised` unless the person inspects dimensions today. */
export function inspectorOf(context: Pick<Context<Operation>, 'tx' | 'actor' | 'today'>): Promise<HeldAuthorisation> {
  const need = { process: 'dimensional-inspection', level: 'inspect', today: context.today } as const;
  return requireAuthorisation(context.tx, context.actor, need);
}

/** Decides a finding: adds steps, parts and money or ends the part's way, and signs it. Answers what a command reports of it. */
export async function decide(context: Context<Operation>, finding: DecidableFinding, decision: SignedDecision) {
  const { tx } = context;
  const { traveler, workOrderId } = finding;
  const authorisation = await inspectorOf(context);
  refuseImpossible(finding, decision);
  await refuseTooHeavy(tx, finding, decision.disposition);
  const parts = await partsDemanded(tx, finding, decision);
  const stepIds = await carryOut(context, finding, { ...decision, parts });
  const overAndAbove = isOverAndAbove(finding, { labourMinor: decision.labourMinor, parts });
  await writeDecision(context, finding, { ...decision, parts, authorisation, overAndAbove });
  await finishEvaluation(context, workOrderId);
  const { stage } = await tx.workOrder.findUniqueOrThrow({ where: { id: workOrderId }, select: { stage: true } });
  const { disposition } = decision;
  const version = finding.version + 1;
  const subjects = [
    { kind: 'finding', id: finding.id, before: finding.version, after: version },
    { kind: 'traveler', id: traveler.id, before: traveler.version, after: traveler.version + 1 },
    { kind: 'work-order', id: workOrderId },
  ] as const;
  return {
    reply: { id: finding.id, version, disposition, overAndAbove, stepIds, stage },
    subjects: [...subjects] as [...typeof subjects],
    authorisation: { ...authorisation },
    facts: { number: finding.number, disposition, overAndAbove, parts, steps: stepIds.length, stage },
  };
}

/** What is found after the firm quote went out is over and above it, if it costs anything. */
function isOverAndAbove(
  { workOrder }: DecidableFinding,
  cost: { labourMinor: number; parts: readonly unknown[] },
): boolean {
  const quoted = ['quote-sent', 'quote-silent', 'approved'].includes(workOrder.consent);
  return quoted && (cost.labourMinor > 0 || cost.parts.length > 0);
}

async function writeDecision(
  context: Context<Operation>,
  finding: DecidableFinding,
  made: SignedDecision & { authorisation: HeldAuthorisation; overAndAbove: boolean },
): Promise<void> {
  const { tx } = context;
  const { traveler } = finding;
  const { disposition, labourMinor, overAndAbove } = made;
  const { id: signOffId } = await writeSignOff(context, {
    workOrderId: finding.workOrderId,
    subject: { kind: 'finding', id: finding.id },
    meaning: made.meaning,
    result: disposition,
    authorisation: made.authorisation,
    revisionId: traveler.revisionId,
    content: contentOf(finding, made),
    ...(made.supersedesId ? { supersedesId: made.supersedesId } : {}),
  });
  const decided = { disposition, dispositionNote: made.note, signOffId, labourMinor, overAndAbove };
  await tx.finding.update({ where: { id: finding.id }, data: { ...decided, version: { increment: 1 } } });
  await tx.traveler.update({
    where: { id: traveler.id },
    data: { disposition: await gravestOf(tx, traveler.id), version: { increment: 1 } },
  });
}

/** What the inspector saw and decided; the signature is bound to it. */
function contentOf(finding: DecidableFinding, { disposition, note, steps, parts, labourMinor }: Decision) {
  const { number, area, damage, place, description, spot, corrosionClass, traveler } = finding;
  const seen = { ...(spot === null ? {} : { spot }), ...(corrosionClass === null ? {} : { corrosionClass }) };
  return {
    finding: { number, area, damage, place, description, ...seen },
    part: {
      traveler: traveler.number,
      class: traveler.partClass,
      position: traveler.position,
      itemId: traveler.itemId,
    },
    decision: { disposition, note, steps, parts, labourMinor },
  };
}
