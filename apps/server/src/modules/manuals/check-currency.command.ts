import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { requireCurrentRevision } from './public.ts';

export const checkCurrency = defineCommand(manualOperations.checkCurrency, {
  locks: (input) => [`revision:${input.revisionId}`],
  async execute({ tx, input, actor, today }) {
    const revision = found(
      await tx.manualRevision.findUnique({ where: { id: input.revisionId } }),
      'This manual revision',
    );
    await requireCurrentRevision(tx, revision.id);
    if (input.checkedOn > today)
      throw new Problem('invalid-input', 'The check is still to come', {}, [
        { pointer: '/checkedOn', detail: `${input.checkedOn} is still to come` },
      ]);
    const version = revision.version + 1;
    await tx.manualRevision.update({
      where: { id: revision.id },
      data: { currencyCheckedBy: actor.personId, currencyCheckedOn: toDbDate(input.checkedOn), version },
    });
    return {
      reply: { id: revision.id, version },
      subjects: [
        { kind: 'manual-revision', id: revision.id, before: revision.version, after: version },
        { kind: 'manual', id: revision.manualId },
      ],
      facts: { revision: revision.revision },
    };
  },
});
