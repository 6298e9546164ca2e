import { Problem } from '@hubwright/contracts/problems';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { normaliseSerial } from '@hubwright/rules/identity';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { requireAuthorisation } from '../people/public.ts';

/** Until this is signed, a provisional name stands in and return to service stays shut. */
export const confirmIdentity = defineCommand(unitOperations.confirmIdentity, {
  locks: (input) => [`item:${input.itemId}`, `serial:${normaliseSerial(input.serial)}`],
  async execute({ tx, input, actor, today, expectedVersion }) {
    const item = found(await tx.serializedItem.findUnique({ where: { id: input.itemId } }), 'This part');
    if (item.serial !== null)
      throw new Problem('identity-settled', `This is ${item.partNumber} serial ${item.serial}`, {
        serial: item.serial,
      });
    sameVersion(item.version, expectedVersion);
    const authorisation = await requireAuthorisation(tx, actor, {
      process: 'receiving-inspection',
      level: 'inspect',
      today,
    });
    const serial = normaliseSerial(input.serial);
    const { maker, partNumber } = item;
    const other = await tx.serializedItem.findUnique({
      where: { maker_partNumber_serial: { maker, partNumber, serial } },
    });
    if (other)
      throw new Problem('identity-taken', `${maker} ${partNumber} serial ${serial} is already on record`, {
        itemId: other.id,
      });
    const version = item.version + 1;
    await tx.serializedItem.update({ where: { id: item.id }, data: { serial, version } });
    return {
      reply: { id: item.id, version },
      subjects: [{ kind: 'unit', id: item.id, before: item.version, after: version }],
      facts: { serial, provisionalName: item.provisionalName },
      authorisation,
    };
  },
});
