import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { toDbDate } from '../../platform/database/dates.ts';

export const addSupplier = defineCommand(supplierOperations.addSupplier, {
  locks: (input) => [`supplier-code:${input.code}`],
  async execute({ tx, input, newId }) {
    const { approvedUntil, ...given } = input;
    const id = newId();
    await tx.supplier.create({
      data: { ...given, id, approvedUntil: approvedUntil ? toDbDate(approvedUntil) : null },
    });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'supplier', id, after: 1 }], facts: { code: input.code } };
  },
});
