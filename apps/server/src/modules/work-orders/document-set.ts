import type { DocumentKind } from '@hubwright/contracts/manuals/words';
import { Problem } from '@hubwright/contracts/problems';
import type { documentDifference } from '@hubwright/contracts/work-orders/document-set-operations';
import type { z } from 'zod';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { documentsOf } from '../manuals/public.ts';

export type DocumentDifference = z.output<typeof documentDifference>;
export type NamedIssue = Awaited<ReturnType<typeof documentsOf>>[number];

/** The set a work order goes by, and the one it would go by now. */
export async function documentSets(tx: Tx, workOrder: { id: string; modelId: string }) {
  const goesBy = await tx.documentIssue.findMany({
    where: { workOrders: { some: { workOrderId: workOrder.id } } },
    orderBy: [{ document: { number: 'asc' } }, { document: { kind: 'asc' } }],
    include: { document: true },
  });
  return { goesBy, current: await documentsOf(tx, workOrder.modelId) };
}

/** A unit that is received goes by what is current then. */
export async function goByCurrentDocuments(tx: Tx, workOrder: { id: string; modelId: string }): Promise<void> {
  const current = await documentsOf(tx, workOrder.modelId);
  await tx.workOrderDocument.deleteMany({ where: { workOrderId: workOrder.id } });
  await tx.workOrderDocument.createMany({
    data: current.map(({ id }) => ({ workOrderId: workOrder.id, issueId: id })),
  });
}

/** What differs, document by document, with what every issue between the two says it changed. */
export async function documentDifferences(
  tx: Tx,
  { goesBy, current }: { goesBy: readonly NamedIssue[]; current: readonly NamedIssue[] },
): Promise<DocumentDifference[]> {
  const all = new Map([...goesBy, ...current].map(({ document }) => [document.id, document]));
  const differences: DocumentDifference[] = [];
  for (const document of [...all.values()].sort((a, b) => (a.number < b.number ? -1 : 1))) {
    const before = goesBy.find(({ documentId }) => documentId === document.id);
    const after = current.find(({ documentId }) => documentId === document.id);
    if (before?.id === after?.id) continue;
    differences.push({
      change: !before ? 'added' : after ? 'changed' : 'removed',
      ...{ kind: document.kind as DocumentKind, number: document.number, title: document.title },
      before: before ? nameOf(before) : null,
      after: after ? nameOf(after) : null,
      says: after ? await saidSince(tx, { before, after }) : [],
    });
  }
  return differences;
}

const nameOf = ({ issue, issuedOn }: NamedIssue) => `${issue} of ${fromDbDate(issuedOn)}`;

async function saidSince(tx: Tx, { before, after }: { before: NamedIssue | undefined; after: NamedIssue }) {
  if (!before) return [`${after.issue}: ${after.summary}`];
  const issues = await tx.documentIssue.findMany({
    where: { documentId: after.documentId, issuedOn: { gte: before.issuedOn }, id: { gt: before.id } },
    orderBy: [{ issuedOn: 'asc' }, { id: 'asc' }],
    take: 50,
  });
  return issues.map(({ issue, summary }) => `${issue}: ${summary}`);
}

/** Both sets and what differs, for a read outside any transaction: nothing is written on this way, so the read-only models serve as well. */
export async function documentsForReading(models: Reads['models'], workOrder: { id: string; modelId: string }) {
  const tx = models as unknown as Tx;
  const sets = await documentSets(tx, workOrder);
  return { set: sets.goesBy, differences: await documentDifferences(tx, sets) };
}

/** Throws `documents-changed`, naming them, while the work does not go by the current issues. */
export async function requireCurrentDocuments(tx: Tx, workOrder: { id: string; number: string; modelId: string }) {
  const changed = await changedDocuments(tx, workOrder);
  if (changed.length === 0) return;
  throw new Problem(
    'documents-changed',
    `${workOrder.number} does not go by the current issue of: ${changed.join(', ')}`,
    {
      documents: changed,
    },
  );
}

/** Numbers of documents whose current issue the work does not go by, or that belong to its model no more. */
export async function changedDocuments(tx: Tx, workOrder: { id: string; modelId: string }): Promise<string[]> {
  const { goesBy, current } = await documentSets(tx, workOrder);
  const only = (some: readonly NamedIssue[], others: readonly NamedIssue[]) =>
    some.filter(({ id }) => !others.some((other) => other.id === id));
  const numbers = [...only(goesBy, current), ...only(current, goesBy)].map(({ document }) => document.number);
  return [...new Set(numbers)].sort();
}

/** The same as one expression over the work order `w`: numbers with commas between, or null. */
export const changedDocumentsSql = `(
  SELECT string_agg(d.number, ', ' ORDER BY d.number) FROM (
    SELECT i.document_id FROM document_models dm JOIN document_issues i ON i.document_id = dm.document_id AND i.state = 'current'
    WHERE dm.model_id = w.model_id
      AND NOT EXISTS (SELECT 1 FROM work_order_documents wd WHERE wd.work_order_id = w.id AND wd.issue_id = i.id)
    UNION
    SELECT i.document_id FROM work_order_documents wd JOIN document_issues i ON i.id = wd.issue_id
    WHERE wd.work_order_id = w.id AND (i.state <> 'current' OR NOT EXISTS (
      SELECT 1 FROM document_models dm WHERE dm.document_id = i.document_id AND dm.model_id = w.model_id))
  ) changed JOIN documents d ON d.id = changed.document_id)`;
