import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { openDocument } from './document.ts';

export const withdrawDocument = defineCommand(documentOperations.withdrawDocument, {
  locks: (input) => [`document:${input.documentId}`],
  async execute({ tx, input, today, expectedVersion }) {
    const document = await openDocument(tx, input.documentId, expectedVersion);
    await tx.documentIssue.updateMany({
      where: { documentId: document.id, state: 'current' },
      data: { state: 'withdrawn', version: { increment: 1 } },
    });
    const version = document.version + 1;
    await tx.document.update({ where: { id: document.id }, data: { withdrawnOn: toDbDate(today), version } });
    return {
      reply: { id: document.id, version },
      subjects: [{ kind: 'document', id: document.id, before: document.version, after: version }],
      facts: { number: document.number },
      reason: input.reason,
    };
  },
});
