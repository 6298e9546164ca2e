import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { openDocument, refuseAhead } from './document.ts';

/** The issue before is superseded in the same moment: a document never has two current ones, and never none. */
export const issueDocument = defineCommand(documentOperations.issueDocument, {
  locks: (input) => [`document:${input.documentId}`],
  async execute({ tx, input, newId, today, expectedVersion }) {
    const document = await openDocument(tx, input.documentId, expectedVersion);
    const { issue, issuedOn, summary } = input;
    refuseAhead(issuedOn, 'issuedOn', today);
    const [before] = document.issues;
    if (before && issuedOn < fromDbDate(before.issuedOn)) {
      const detail = `Issue ${before.issue} is of ${fromDbDate(before.issuedOn)}`;
      throw new Problem('issue-older', detail, {}, [{ pointer: '/issuedOn', detail }]);
    }
    if (before)
      await tx.documentIssue.update({
        where: { id: before.id },
        data: { state: 'superseded', version: { increment: 1 } },
      });
    const issueId = newId();
    await tx.documentIssue.create({
      data: { id: issueId, documentId: document.id, issue, issuedOn: toDbDate(issuedOn), state: 'current', summary },
    });
    const version = document.version + 1;
    await tx.document.update({ where: { id: document.id }, data: { version } });
    return {
      reply: { id: document.id, version, issueId },
      subjects: [{ kind: 'document', id: document.id, before: document.version, after: version }],
      facts: { number: document.number, supersedes: before?.issue ?? null, issueId },
    };
  },
});
