import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { refuseAhead, requireModels } from './document.ts';

export const addDocument = defineCommand(documentOperations.addDocument, {
  locks: (input) => [`document-number:${input.kind} ${input.number}`],
  async execute({ tx, input, newId, today }) {
    const { kind, number, title, issuer, issue, issuedOn, summary } = input;
    refuseAhead(issuedOn, 'issuedOn', today);
    const modelIds = await requireModels(tx, input.modelIds);
    const [id, issueId] = [newId(), newId()];
    await tx.document.create({ data: { id, kind, number, title, issuer } });
    await tx.documentModel.createMany({ data: modelIds.map((modelId) => ({ documentId: id, modelId })) });
    await tx.documentIssue.create({
      data: { id: issueId, documentId: id, issue, issuedOn: toDbDate(issuedOn), state: 'current', summary },
    });
    return {
      reply: { id, version: 1, issueId },
      subjects: [{ kind: 'document', id, after: 1 }],
      facts: { number, issueId },
    };
  },
});
