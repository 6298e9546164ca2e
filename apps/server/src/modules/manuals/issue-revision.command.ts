import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { refuseWrongContent } from './check-content.ts';
import { writeContent } from './write-content.ts';

/** The whole revision in one transaction: it is current when it is there, and the one before no longer is. */
export const issueRevision = defineCommand(manualOperations.issueRevision, {
  locks: (input) => [`manual:${input.manualId}`],
  async execute(context) {
    const { tx, input, newId } = context;
    const manual = found(await tx.manual.findUnique({ where: { id: input.manualId } }), 'This manual');
    const partIds = await refuseWrongContent(tx, manual, input.models);
    const before = await tx.manualRevision.findFirst({ where: { manualId: manual.id, state: 'current' } });
    if (before)
      await tx.manualRevision.update({
        where: { id: before.id },
        data: { state: 'superseded', version: { increment: 1 } },
      });
    const id = newId();
    await tx.manualRevision.create({
      data: { id, manualId: manual.id, revision: input.revision, issuedOn: toDbDate(input.issuedOn), state: 'current' },
    });
    await writeContent(context, id, { models: input.models, partIds });
    return {
      reply: { id, version: 1, superseded: before?.id ?? null },
      subjects: [
        { kind: 'manual', id: manual.id },
        { kind: 'manual-revision', id, after: 1 },
        ...(before
          ? [{ kind: 'manual-revision', id: before.id, before: before.version, after: before.version + 1 }]
          : []),
      ],
      facts: { manual: manual.number, supersedes: before?.revision ?? null },
    };
  },
});
