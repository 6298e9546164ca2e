import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';

/** What it superseded stands again: a withdrawn one says nothing of others. */
export const withdrawDirective = defineCommand(directiveOperations.withdrawDirective, {
  locks: (input) => [`directive:${input.directiveId}`],
  async execute({ tx, input, today, expectedVersion }) {
    const directive = found(await tx.directive.findUnique({ where: { id: input.directiveId } }), 'This directive');
    sameVersion(directive.version, expectedVersion);
    if (directive.withdrawnOn) throw new Problem('directive-withdrawn', `${directive.number} was withdrawn`);
    const version = directive.version + 1;
    await tx.directive.update({
      where: { id: directive.id },
      data: { withdrawnOn: toDbDate(today), withdrawnBecause: input.reason, version },
    });
    return {
      reply: { id: directive.id, version },
      subjects: [{ kind: 'directive', id: directive.id, before: directive.version, after: version }],
      facts: { number: directive.number, revision: directive.revision },
      reason: input.reason,
    };
  },
});
