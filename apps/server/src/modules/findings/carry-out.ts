import type { Disposition } from '@hubwright/contracts/findings/areas';
import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { addDemandFromFinding } from '../kits/public.ts';
import { uninstall } from '../units/public.ts';
import { type AdvancedWorkOrder, openClosedBuild } from '../work-orders/public.ts';
import { type AskedStep, layRepair } from './repair-steps.ts';

export interface PartAsked {
  readonly partId: string;
  readonly position: string;
  readonly quantity: number;
}

interface Decided {
  readonly id: string;
  readonly number: string;
  readonly travelerId: string;
  readonly stepId: string | null;
  readonly workOrderId: string;
  readonly workOrder: AdvancedWorkOrder;
  readonly traveler: {
    readonly id: string;
    readonly itemId: string;
    readonly partClass: string;
    readonly position: string;
  };
}

/** The parts a decision asks for. A rejected part whose number the shop stocks is asked for at its own position without being named. */
export async function partsDemanded(
  tx: Tx,
  finding: Decided,
  input: { disposition: Disposition; parts: readonly PartAsked[] },
): Promise<PartAsked[]> {
  const { traveler } = finding;
  if (input.disposition !== 'reject' || traveler.partClass === 'assembly') return [...input.parts];
  const item = await tx.serializedItem.findUniqueOrThrow({ where: { id: traveler.itemId } });
  const part = await tx.part.findUnique({ where: { number: item.partNumber }, select: { id: true } });
  if (!part || input.parts.some(({ partId }) => partId === part.id)) return [...input.parts];
  const position = await positionInKit(tx, finding, part.id);
  return [...input.parts, { partId: part.id, position, quantity: 1 }];
}

/** Kit lists write positions in words (`blade 1`), travelers with dashes (`blade-1`). */
async function positionInKit(tx: Tx, { workOrderId, traveler }: Decided, partId: string): Promise<string> {
  const lines = await tx.kitLine.findMany({ where: { partId, kit: { workOrderId } }, select: { position: true } });
  const plain = (position: string) => position.toLowerCase().replaceAll(/[\s-]+/g, ' ');
  return lines.find(({ position }) => plain(position) === plain(traveler.position))?.position ?? traveler.position;
}

/** Lays the repair on the traveler, or ends the part's way; asks the kit for parts. Answers the new steps' ids. */
export async function carryOut(
  context: Context<Operation>,
  finding: Decided,
  decision: { disposition: Disposition; steps: readonly AskedStep[]; parts: readonly PartAsked[] },
): Promise<string[]> {
  const { tx } = context;
  await reopenBuild(context, finding, decision);
  await tx.findingPart.createMany({
    data: decision.parts.map((part) => ({ ...part, id: context.newId(), findingId: finding.id })),
  });
  if (decision.parts.length > 0) {
    await addDemandFromFinding(context, {
      workOrderId: finding.workOrderId,
      findingId: finding.id,
      parts: decision.parts,
    });
  }
  if (decision.disposition === 'repair') return layRepair(context, finding, decision.steps);
  if (decision.disposition === 'reject') await endOfPart(context, finding);
  return [];
}

/** Work or parts asked for after the build was closed open it again, kits included. */
async function reopenBuild(
  context: Context<Operation>,
  finding: Decided,
  { disposition, parts }: { disposition: Disposition; parts: readonly PartAsked[] },
): Promise<void> {
  const { workOrder } = finding;
  if (disposition === 'serviceable' && parts.length === 0) return;
  await openClosedBuild(context, workOrder.id);
}

/** A rejected part leaves the unit and needs no more work; what was signed on it stays. */
async function endOfPart(context: Context<Operation>, { id, traveler }: Decided): Promise<void> {
  const { tx } = context;
  const open = await tx.travelerStep.findMany({
    where: { travelerId: traveler.id, state: 'open' },
    select: { id: true },
  });
  const endedStepIds = open.map((step) => step.id);
  await tx.travelerStep.updateMany({ where: { id: { in: endedStepIds } }, data: { state: 'not-needed' } });
  await tx.finding.update({ where: { id }, data: { endedStepIds } });
  if (traveler.partClass !== 'assembly') await uninstall(context, { itemId: traveler.itemId, on: context.today });
}

const worst: readonly string[] = ['serviceable', 'repair', 'reject'];

/** A traveler shows the gravest decision that stands on its part; null while none does. */
export async function gravestOf(tx: Tx, travelerId: string): Promise<string | null> {
  const decided = await tx.finding.findMany({
    where: { travelerId, disposition: { not: null } },
    select: { disposition: true },
  });
  const ranks = decided.map(({ disposition }) => worst.indexOf(disposition ?? ''));
  return worst[Math.max(-1, ...ranks)] ?? null;
}
