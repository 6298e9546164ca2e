import { trayOperations } from '@hubwright/contracts/kits/tray-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { binExists } from '../inventory/public.ts';
import { holding, moveHeld, scannedAt, takeFrom } from './from-holding.ts';
import { kitLocks, kitSubjects, openKit, refuseStopped, touchKit } from './kit.ts';
import { putInTray, scannedLot } from './put-in-tray.ts';

/** Another lot takes the place of one in the tray, for the same lines; the first goes back to a bin. */
export const swapLot = defineCommand(trayOperations.swapLot, {
  locks: async (input, tx) => [
    ...new Set([
      ...(await kitLocks(tx, input.kitId, { code: input.lotCode })),
      ...(await kitLocks(tx, input.kitId, { code: input.newLotCode })),
    ]),
  ],
  async execute(context) {
    const { tx, input } = context;
    const kit = await openKit(tx, input.kitId);
    refuseStopped(kit);
    if (input.lotCode === input.newLotCode) throw sameLot(input.lotCode);
    const held = takeFrom(await scannedAt(context, kit, { kind: 'tray', code: input.lotCode }), input.quantity);
    await binExists(tx, input.bin);
    const back = { from: holding(kit, 'tray'), to: { kind: 'bin', ref: input.bin }, reason: input.reason } as const;
    const movementIds = (await moveHeld(context, held, back)).map(({ movementId }) => movementId);
    const lines = [];
    for (const { lineId, quantity } of held) {
      // Read anew for each line: what the one before took is no longer there.
      const lot = await scannedLot(context, input.newLotCode);
      const put = await putInTray(context, kit, { lot, lineId: lineId ?? undefined, quantity });
      movementIds.push(...put.movementIds);
      for (const { line, stillNeeds, quantity: given } of put.shares)
        lines.push({ lineId: line.id, position: line.position, quantity: given, stillNeeds });
    }
    const reply = await touchKit(tx, kit);
    const lotIds = [...held.map(({ lotId }) => lotId), (await scannedLot(context, input.newLotCode)).id];
    return {
      reply: { ...reply, lotCode: input.newLotCode, lines, movementIds },
      subjects: kitSubjects(kit, reply.version, lotIds),
      facts: { kit: kit.code, from: input.lotCode, to: input.newLotCode, back: input.bin, lines },
      reason: input.reason,
    };
  },
});

function sameLot(code: string): Problem {
  return new Problem('invalid-input', `${code} cannot take its own place`, {}, [
    { pointer: '/newLotCode', detail: 'Scan another lot' },
  ]);
}
