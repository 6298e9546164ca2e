import { customerOperations } from '@hubwright/contracts/customers/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';

export const addAircraft = defineCommand(customerOperations.addAircraft, {
  locks: (input) => [`registration:${input.registration}`],
  async execute({ tx, input, newId }) {
    const customer = found(await tx.customer.findUnique({ where: { id: input.customerId } }), 'This customer');
    const id = newId();
    await tx.aircraft.create({ data: { ...input, id } });
    return {
      reply: { id, version: 1 },
      subjects: [
        { kind: 'aircraft', id, after: 1 },
        { kind: 'customer', id: customer.id },
      ],
      facts: { registration: input.registration },
    };
  },
});
