import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { refuseAhead } from './document.ts';

export const checkDocument = defineCommand(documentOperations.checkDocument, {
  locks: (input) => [`document-issue:${input.issueId}`],
  async execute({ tx, input, actor, today }) {
    const issue = found(
      await tx.documentIssue.findUnique({ where: { id: input.issueId }, include: { document: true } }),
      'This issue',
    );
    if (issue.state !== 'current')
      throw new Problem('issue-superseded', `Issue ${issue.issue} of ${issue.document.number} is ${issue.state}`);
    refuseAhead(input.checkedOn, 'checkedOn', today);
    const version = issue.version + 1;
    await tx.documentIssue.update({
      where: { id: issue.id },
      data: { currencyCheckedBy: actor.personId, currencyCheckedOn: toDbDate(input.checkedOn), version },
    });
    return {
      reply: { id: issue.id, version },
      subjects: [{ kind: 'document', id: issue.documentId }],
      facts: { number: issue.document.number, issue: issue.issue },
    };
  },
});
