import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { kitLocks, kitSubjects, openKit, refuseStopped, touchKit } from './kit.ts';
import { putInTray, scannedLot } from './put-in-tray.ts';

/** One scan: pieces of the lot go from their bin into the tray of the kit. */
export const issueLot = defineCommand(kitsOperations.issueLot, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { code: input.lotCode }),
  async execute(context) {
    const { tx, input } = context;
    const kit = await openKit(tx, input.kitId);
    refuseStopped(kit);
    const lot = await scannedLot(context, input.lotCode);
    const { shares, movementIds } = await putInTray(context, kit, {
      lot,
      lineId: input.lineId,
      quantity: input.quantity,
    });
    const reply = await touchKit(tx, kit);
    const lines = shares.map(({ line, quantity, stillNeeds }) => ({
      lineId: line.id,
      position: line.position,
      quantity,
      stillNeeds,
    }));
    return {
      reply: { ...reply, lotCode: lot.code, lines, movementIds },
      subjects: kitSubjects(kit, reply.version, [lot.id]),
      facts: { kit: kit.code, lot: lot.code, part: lot.partNumber, lines },
    };
  },
});
