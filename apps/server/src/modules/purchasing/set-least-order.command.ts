import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';

export const setLeastOrder = defineCommand(approvalOperations.setLeastOrder, {
  locks: (input) => [`supplier:${input.supplierId}`],
  async execute({ tx, input, expectedVersion }) {
    const supplier = found(await tx.supplier.findUnique({ where: { id: input.supplierId } }), 'This supplier');
    sameVersion(supplier.version, expectedVersion);
    const version = supplier.version + 1;
    await tx.supplier.update({ where: { id: supplier.id }, data: { leastOrder: input.leastOrder, version } });
    return {
      reply: { id: supplier.id, version },
      subjects: [{ kind: 'supplier', id: supplier.id, before: supplier.version, after: version }],
      facts: { code: supplier.code, before: supplier.leastOrder, least: input.leastOrder },
    };
  },
});
