import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { requireCurrentRevision } from '../manuals/public.ts';
import { requireAuthorisation } from '../people/public.ts';
import { applicationInWords, currentProgram } from './program.ts';

const operation = governorOperations.issueGovernorProgram;
type Issuing = Context<typeof operation>;

/** A program is issued whole, for one application, by the revision that is current; the one before stays on record. */
export const issueProgram = defineCommand(operation, {
  locks: ({ revisionId, applicationId }) => [`governor-program:${revisionId}:${applicationId}`],
  async execute(context) {
    const { tx, input, actor, now, today, entryId, newId } = context;
    const { revisionId, applicationId, basis, signature: _signature, ...content } = input;
    await requireCurrentRevision(tx, revisionId);
    const application = await applicationOf(context);
    refuseHalf(content);
    const need = { process: 'governor-bench', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const before = await currentProgram(tx, { revisionId, applicationId });
    const issue = (before?.issue ?? 0) + 1;
    const id = newId();
    await tx.governorProgram.create({
      data: {
        ...{ id, modelId: application.modelId, revisionId, applicationId, issue, basis, content },
        ...{ issuedBy: actor.personId, issuedAt: now, entryId },
      },
    });
    return {
      reply: { id, version: issue, issue },
      subjects: [
        { kind: 'governor-program', id, after: issue },
        { kind: 'manual-revision', id: revisionId },
      ],
      authorisation: { ...authorisation },
      facts: { application: applicationInWords(application), issue, basis, content },
    };
  },
});

/** Throws `program-wrong` unless it is an application of a governor whose manual this is. */
async function applicationOf({ tx, input }: Issuing) {
  const application = found(
    await tx.application.findUnique({ where: { id: input.applicationId }, include: { model: true } }),
    'This application',
  );
  const revision = await tx.manualRevision.findUniqueOrThrow({ where: { id: input.revisionId } });
  const { model } = application;
  const wrong =
    model.kind !== 'governor'
      ? `${model.designation} is no governor`
      : model.manualId !== revision.manualId
        ? `${model.designation} goes by another manual`
        : undefined;
  if (wrong) throw new Problem('program-wrong', wrong, {}, [{ pointer: '/applicationId', detail: wrong }]);
  return application;
}

/** Throws `program-wrong`: points have names of their own, and adjustments reopen points there are. */
function refuseHalf({ points, adjustments }: Pick<Issuing['input'], 'points' | 'adjustments'>): void {
  const names = points.map(({ name }) => name.toLowerCase());
  const wrong: Pointed[] = points.flatMap(({ name }, index) =>
    names.indexOf(name.toLowerCase()) === index
      ? []
      : [{ pointer: `/points/${index}/name`, detail: `“${name}” is there twice` }],
  );
  for (const [index, { what, reopens }] of adjustments.entries())
    for (const name of reopens.filter((one) => !points.some((point) => point.name === one)))
      wrong.push({ pointer: `/adjustments/${index}/reopens`, detail: `${what}: there is no point “${name}”` });
  const [first] = wrong;
  if (first) throw new Problem('program-wrong', first.detail, {}, wrong);
}
