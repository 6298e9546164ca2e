import { Problem } from '@hubwright/contracts/problems';
import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { addDays } from '@hubwright/rules/dates';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';

/** An exception is short: what lasts longer is an approval. Practice, no source. */
const longestDays = 90;

export const allowSupplier = defineCommand(approvalOperations.allowSupplier, {
  locks: (input) => [`supplier:${input.supplierId}`],
  async execute({ tx, input, now, today, newId, actor, entryId }) {
    const supplier = found(await tx.supplier.findUnique({ where: { id: input.supplierId } }), 'This supplier');
    const last = addDays(today, longestDays);
    if (input.goodUntil < today || input.goodUntil > last)
      throw new Problem('invalid-input', 'An exception holds from today for at most 90 days', {}, [
        { pointer: '/goodUntil', detail: `From ${today} to ${last}` },
      ]);
    if (input.orderId)
      found(
        await tx.purchaseOrder.findUnique({ where: { id: input.orderId, supplierId: supplier.id } }),
        'This order of the supplier',
      );
    const id = newId();
    await tx.supplierException.create({
      data: {
        ...{ id, supplierId: supplier.id, orderId: input.orderId ?? null, reason: input.reason },
        ...{ goodUntil: toDbDate(input.goodUntil), personId: actor.personId, at: now, entryId },
      },
    });
    return {
      reply: { id },
      subjects: [{ kind: 'supplier', id: supplier.id }],
      facts: { code: supplier.code, goodUntil: input.goodUntil, order: input.orderId ?? null },
      reason: input.reason,
    };
  },
});
