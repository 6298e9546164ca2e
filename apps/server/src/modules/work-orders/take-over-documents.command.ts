import { Problem } from '@hubwright/contracts/problems';
import { documentSetOperations } from '@hubwright/contracts/work-orders/document-set-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';
import { documentDifferences, documentSets, goByCurrentDocuments, type NamedIssue } from './document-set.ts';

const operation = documentSetOperations.takeOverDocuments;

/** Open work goes over to the current issues: what they change was read by an inspector, and stands in what was signed. */
export const takeOverDocuments = defineCommand(operation, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input, actor, today, expectedVersion } = context;
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    sameVersion(workOrder.version, expectedVersion);
    if (workOrder.releasedAt || workOrder.closedAt)
      throw new Problem('wrong-state', `${workOrder.number} has been released or closed`);
    const sets = await documentSets(tx, workOrder);
    const differences = await documentDifferences(tx, sets);
    if (differences.length === 0)
      throw new Problem('documents-current', `${workOrder.number} goes by the current documents`);
    const need = { process: 'final-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    await goByCurrentDocuments(tx, workOrder);
    await writeSignOff(context, {
      workOrderId: workOrder.id,
      subject: { kind: 'document-change', id: workOrder.id },
      meaning: operation.signs ?? '',
      result: 'pass',
      authorisation,
      revisionId: workOrder.revisionId,
      content: { workOrder: workOrder.number, differences, set: sets.current.map(inWords) },
    });
    const version = workOrder.version + 1;
    await tx.workOrder.update({ where: { id: workOrder.id }, data: { version } });
    return {
      reply: { id: workOrder.id, version, differences },
      subjects: [{ kind: 'work-order', id: workOrder.id, before: workOrder.version, after: version }],
      authorisation: { ...authorisation },
      facts: { differences },
    };
  },
});

function inWords({ issue, issuedOn, document }: NamedIssue) {
  return { kind: document.kind, number: document.number, issue, issuedOn: fromDbDate(issuedOn) };
}
