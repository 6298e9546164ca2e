import { customerOperations } from '@hubwright/contracts/customers/operations';
import { defineCommand } from '../../platform/command/command.ts';

export const addCustomer = defineCommand(customerOperations.addCustomer, {
  locks: (input) => [`customer-code:${input.code}`],
  async execute({ tx, input, newId }) {
    const id = newId();
    await tx.customer.create({ data: { ...input, id } });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'customer', id, after: 1 }], facts: { code: input.code } };
  },
});
