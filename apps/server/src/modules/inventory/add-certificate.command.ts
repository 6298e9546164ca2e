import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { lotLocks, theLot } from './lot.ts';

/** The paper for a lot came later. An earlier certificate stays in the record. */
export const addCertificate = defineCommand(inventoryOperations.addCertificate, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute({ tx, input, expectedVersion }) {
    const lot = await theLot(tx, input.lotId);
    sameVersion(lot.version, expectedVersion);
    const version = lot.version + 1;
    await tx.lot.update({ where: { id: lot.id }, data: { certificate: input.certificate, version } });
    return {
      reply: { id: lot.id, version },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { code: lot.code, before: lot.certificate, after: input.certificate },
    };
  },
});
