import { Problem } from '@hubwright/contracts/problems';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { closeKits, kitsOf } from '../kits/public.ts';
import { requireCurrentRevision } from '../manuals/public.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';
import { advance } from './advance.ts';
import { bladeSetOf } from './blade-set.ts';
import { requireCurrentDocuments } from './document-set.ts';

const operation = travelerOperations.closeBuild;

/** The ledger alone decides whether the build is whole; beside that every step up to the build must be signed. */
export const closeBuild = defineCommand(operation, {
  locks: async (input, tx) => [`work-order:${input.workOrderId}`, ...(await kitsOf(tx, input.workOrderId))],
  async execute(context) {
    const { tx, input, actor, today } = context;
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    const authorisation = await requireAuthorisation(tx, actor, { process: 'assembly', level: 'perform', today });
    await requireCurrentRevision(tx, workOrder.revisionId);
    await requireCurrentDocuments(tx, workOrder);
    const moved = await advance(context, workOrder, 'close-build');
    await refuseOpenSteps(tx, workOrder);
    await refuseOpenSet(tx, workOrder);
    const kits = await closeKits(context, workOrder.id);
    await writeSignOff(context, {
      workOrderId: workOrder.id,
      subject: { kind: 'build', id: workOrder.id },
      meaning: operation.signs ?? '',
      result: 'pass',
      authorisation,
      revisionId: workOrder.revisionId,
      content: {
        workOrder: workOrder.number,
        kits: kits.map(({ id }) => id),
        leftOver: [],
        missing: [],
        unexpected: [],
      },
    });
    return {
      reply: { id: workOrder.id, version: moved.version, stage: moved.stage, closedOn: today },
      subjects: [{ kind: 'work-order', id: workOrder.id, before: workOrder.version, after: moved.version }, ...kits],
      authorisation: { ...authorisation },
      facts: { stage: moved.stage, kits: kits.map(({ id }) => id) },
    };
  },
});

/** Throws `set-open` while blades differ too much, mates are not answered for or matched sets are not confirmed. */
async function refuseOpenSet(tx: Tx, workOrder: Parameters<typeof bladeSetOf>[1]): Promise<void> {
  const { open } = await bladeSetOf(tx, workOrder);
  if (open.length > 0) throw new Problem('set-open', open.slice(0, 5).join('; '), { open: [...open] });
}

/** Throws `build-steps-open` or `finding-undecided`, each by name. */
async function refuseOpenSteps(tx: Tx, workOrder: { id: string; number: string }): Promise<void> {
  const undecided = await tx.finding.findMany({
    where: { workOrderId: workOrder.id, disposition: null },
    select: { number: true },
  });
  if (undecided.length > 0) {
    throw new Problem('finding-undecided', `Undecided: ${undecided.map(({ number }) => number).join(', ')}`);
  }
  const open = await tx.travelerStep.findMany({
    where: { traveler: { workOrderId: workOrder.id }, state: 'open', phase: { not: 'final' } },
    select: { id: true, title: true, traveler: { select: { number: true, position: true } } },
    orderBy: [{ traveler: { number: 'asc' } }, { sequence: 'asc' }],
  });
  if (open.length === 0) return;
  const names = open.map(({ title, traveler }) => `${traveler.number} ${traveler.position}: ${title}`);
  throw new Problem(
    'build-steps-open',
    `Not signed: ${names.slice(0, 5).join('; ')}${names.length > 5 ? ` and ${names.length - 5} more` : ''}`,
    {
      steps: names,
    },
  );
}
