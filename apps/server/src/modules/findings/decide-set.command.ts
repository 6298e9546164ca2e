import { setOperations } from '@hubwright/contracts/findings/set-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { writeSignOff } from '../people/public.ts';
import { bladeSetOf } from '../work-orders/public.ts';
import { type DecidableFinding, decidableFinding, decisionLocks } from './decidable.ts';
import { decide, inspectorOf } from './decide.ts';
import { writeFinding } from './write-finding.ts';

const operation = setOperations.decideSet;
type Deciding = Context<typeof operation>;
type Mate = { readonly travelerId: string; readonly position: string; readonly stays: boolean };

/** One rejected blade asks of each other whether it stays; those that do not are rejected by a finding of their own. */
export const decideSet = defineCommand(operation, {
  locks: (input, tx) => decisionLocks(tx, input.findingId),
  async execute(context) {
    const { tx, input, now, entryId, expectedVersion } = context;
    const finding = await decidableFinding(tx, input.findingId, expectedVersion);
    const mates = await matesOf(context, finding);
    const authorisation = await inspectorOf(context);
    const rejected = [];
    for (const mate of mates.filter(({ stays }) => !stays)) rejected.push(await rejectMate(context, finding, mate));
    const { id: signOffId } = await writeSignOff(context, {
      workOrderId: finding.workOrderId,
      subject: { kind: 'blade-set', id: finding.id },
      meaning: operation.signs ?? '',
      result: input.reason,
      authorisation,
      revisionId: finding.traveler.revisionId,
      content: { finding: finding.number, position: finding.traveler.position, mates, reason: input.reason },
    });
    await tx.setDecision.create({
      data: {
        ...{ id: context.newId(), workOrderId: finding.workOrderId, findingId: finding.id, signOffId, entryId },
        ...{ mates: mates.map((mate) => ({ ...mate })), reason: input.reason, decidedAt: now },
      },
    });
    const { version } = await tx.finding.update({
      where: { id: finding.id },
      data: { version: { increment: 1 } },
      select: { version: true },
    });
    return {
      reply: { id: finding.id, version, rejected: rejected.map(({ number }) => number) },
      subjects: [
        { kind: 'finding', id: finding.id, before: finding.version, after: version },
        { kind: 'work-order', id: finding.workOrderId },
        ...rejected.flatMap(({ subjects }) => subjects.filter(({ kind }) => kind !== 'work-order')),
      ],
      authorisation: { ...authorisation },
      facts: { number: finding.number, mates, rejected: rejected.map(({ number }) => number) },
      reason: input.reason,
    };
  },
});

/** Every blade that is left, with what is said of it. Throws `nothing-to-replace`, `set-decided` or `mates-unanswered`. */
async function matesOf({ tx, input }: Deciding, finding: DecidableFinding): Promise<Mate[]> {
  const { number, disposition, traveler, workOrder } = finding;
  if (disposition !== 'reject' || traveler.partClass !== 'blade')
    throw new Problem('nothing-to-replace', `${number} did not reject a blade`);
  const decided = await tx.setDecision.findUnique({ where: { findingId: finding.id } });
  if (decided) throw new Problem('set-decided', `${number}: the other blades are decided on`);
  const { questions } = await bladeSetOf(tx, workOrder);
  const question = questions.find(({ findingId }) => findingId === finding.id);
  if (!question) throw new Problem('nothing-to-replace', `${number} asks nothing of other blades by this revision`);
  const said = new Map(input.mates.map(({ travelerId, stays }) => [travelerId, stays]));
  const left = question.mates.filter(({ travelerId }) => !said.has(travelerId)).map(({ position }) => position);
  const isOther = input.mates.some(({ travelerId }) => question.mates.every((mate) => mate.travelerId !== travelerId));
  if (left.length > 0 || isOther || said.size !== input.mates.length)
    throw new Problem(
      'mates-unanswered',
      `Blades left: ${question.mates.map(({ position }) => position).join(', ')}`,
      { left },
      [
        {
          pointer: '/mates',
          detail: left.length > 0 ? `Not answered: ${left.join(', ')}` : 'Answer once for each blade left',
        },
      ],
    );
  return question.mates.map(({ travelerId, position }) => ({
    travelerId,
    position,
    stays: said.get(travelerId) ?? true,
  }));
}

/** Rejects a mate by a finding of its own, with the reason of the set. */
async function rejectMate(context: Deciding, { number, traveler: first }: DecidableFinding, { travelerId }: Mate) {
  const { tx, input } = context;
  const traveler = await tx.traveler.findUniqueOrThrow({ where: { id: travelerId } });
  const found = {
    ...{ area: 'general', damage: 'mate-rejected', place: `with ${first.position}` },
    description: `${number} rejected ${first.position}: ${input.reason}`,
  };
  const written = await writeFinding(context, traveler, { found });
  const finding = await decidableFinding(tx, written.id, undefined);
  const decision = { disposition: 'reject', note: input.reason, steps: [], parts: [], labourMinor: 0 } as const;
  const { subjects } = await decide(context, finding, { ...decision, meaning: operation.signs ?? '' });
  return { number: written.number, subjects };
}
