import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { openDocument, requireModels } from './document.ts';

export const setDocumentModels = defineCommand(documentOperations.setDocumentModels, {
  locks: (input) => [`document:${input.documentId}`],
  async execute({ tx, input, expectedVersion }) {
    const document = await openDocument(tx, input.documentId, expectedVersion);
    const modelIds = await requireModels(tx, input.modelIds);
    const before = await tx.documentModel.findMany({ where: { documentId: document.id }, orderBy: { modelId: 'asc' } });
    await tx.documentModel.deleteMany({ where: { documentId: document.id } });
    await tx.documentModel.createMany({ data: modelIds.map((modelId) => ({ documentId: document.id, modelId })) });
    const version = document.version + 1;
    await tx.document.update({ where: { id: document.id }, data: { version } });
    return {
      reply: { id: document.id, version },
      subjects: [{ kind: 'document', id: document.id, before: document.version, after: version }],
      facts: { number: document.number, before: before.map(({ modelId }) => modelId) },
    };
  },
});
