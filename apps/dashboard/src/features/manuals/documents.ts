import type { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { documentKinds, documentKindTitles } from '@hubwright/contracts/manuals/words';
import type { Reply } from '@hubwright/contracts/operation';

export type WorkDocument = Reply<typeof documentOperations.listDocuments>['rows'][number];
export type DocumentIssue = WorkDocument['issues'][number];

export const kindChoices = documentKinds.map((value) => ({ value, text: documentKindTitles[value] }));

export function currentIssue(document: WorkDocument): DocumentIssue | undefined {
  return document.issues.find(({ state }) => state === 'current');
}
