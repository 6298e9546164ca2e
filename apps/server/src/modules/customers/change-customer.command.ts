import { customerOperations } from '@hubwright/contracts/customers/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';

export const changeCustomer = defineCommand(customerOperations.changeCustomer, {
  locks: (input) => [`customer:${input.customerId}`],
  async execute({ tx, input, expectedVersion }) {
    const { customerId, ...given } = input;
    const customer = found(await tx.customer.findUnique({ where: { id: customerId } }), 'This customer');
    sameVersion(customer.version, expectedVersion);
    const version = customer.version + 1;
    await tx.customer.update({ where: { id: customer.id }, data: { ...given, version } });
    return {
      reply: { id: customer.id, version },
      subjects: [{ kind: 'customer', id: customer.id, before: customer.version, after: version }],
      facts: { acceptedSourcesBefore: customer.acceptedSources, unpaidHoldBefore: customer.unpaidHold },
    };
  },
});
