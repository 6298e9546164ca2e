import { Problem } from '@hubwright/contracts/problems';
import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { toDbDate } from '../../platform/database/dates.ts';

/** A supplier; who orders parts does not approve whom they come from, so a last good day is a manager's to give. */
export const addSupplier = defineCommand(supplierOperations.addSupplier, {
  locks: (input) => [`supplier-code:${input.code}`],
  async execute({ tx, input, newId, now, actor, entryId }) {
    const { approvedUntil, ...given } = input;
    if (approvedUntil && !actor.roles.includes('manager'))
      throw new Problem('not-permitted', 'A manager or inspector approves a supplier: add it without a day', {}, [
        { pointer: '/approvedUntil', detail: 'Leave it empty' },
      ]);
    const id = newId();
    const until = approvedUntil ? toDbDate(approvedUntil) : null;
    await tx.supplier.create({ data: { ...given, id, approvedUntil: until } });
    if (until)
      await tx.supplierApproval.create({
        data: {
          ...{ id: newId(), supplierId: id, approvedUntil: until, basis: 'Approved when it was added.' },
          ...{ personId: actor.personId, at: now, entryId },
        },
      });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'supplier', id, after: 1 }], facts: { code: input.code } };
  },
});
