import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { issueContent } from './issue-content.ts';

/** A revision as it was entered. */
export const issueRevision = defineCommand(manualOperations.issueRevision, {
  locks: (input) => [`manual:${input.manualId}`],
  async execute(context) {
    const { tx, input } = context;
    const manual = found(await tx.manual.findUnique({ where: { id: input.manualId } }), 'This manual');
    const issued = await issueContent(context, { ...input, manual });
    return {
      reply: { id: issued.id, version: 1, superseded: issued.superseded },
      subjects: issued.subjects,
      facts: { manual: manual.number, supersedes: issued.supersedes },
    };
  },
});
