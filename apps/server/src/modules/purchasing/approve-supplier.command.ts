import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { fromDbDateOrNull, toDbDate } from '../../platform/database/dates.ts';

/** The approved-supplier list changes by one line on record: until when, on what ground. */
export const approveSupplier = defineCommand(approvalOperations.approveSupplier, {
  locks: (input) => [`supplier:${input.supplierId}`],
  async execute({ tx, input, now, newId, actor, entryId, expectedVersion }) {
    const supplier = found(await tx.supplier.findUnique({ where: { id: input.supplierId } }), 'This supplier');
    sameVersion(supplier.version, expectedVersion);
    const approvedUntil = input.approvedUntil === null ? null : toDbDate(input.approvedUntil);
    const version = supplier.version + 1;
    await tx.supplier.update({ where: { id: supplier.id }, data: { approvedUntil, version } });
    await tx.supplierApproval.create({
      data: {
        ...{ id: newId(), supplierId: supplier.id, approvedUntil, basis: input.basis },
        ...{ personId: actor.personId, at: now, entryId },
      },
    });
    return {
      reply: { id: supplier.id, version },
      subjects: [{ kind: 'supplier', id: supplier.id, before: supplier.version, after: version }],
      facts: { code: supplier.code, before: fromDbDateOrNull(supplier.approvedUntil), until: input.approvedUntil },
      reason: input.basis,
    };
  },
});
