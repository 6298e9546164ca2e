import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { lotLocks, refuseSuspected, theLot } from './lot.ts';
import { reportSuspicion } from './out-of-use.ts';
import { placeTitle } from './place-title.ts';

/** A lot may not be what its paper says: whoever sees it reports it, and it is kept apart until an inspector has decided. */
export const suspectLot = defineCommand(handlingOperations.suspectLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input } = context;
    const lot = await theLot(tx, input.lotId);
    refuseSuspected(lot);
    if (lot.origin === 'taken-off') throw new Problem('not-stock', `${lot.code} came off a unit`, { lot: lot.code });
    const { reason } = input;
    const { version, freed } = await reportSuspicion(context, lot, reason);
    const elsewhere = await whereElse(tx, lot.id);
    return {
      reply: { id: lot.id, version, freed, elsewhere },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { code: lot.code, freed, elsewhere },
      reason,
    };
  },
});

/** Where pieces of it are that nobody has looked at yet, in words: “2 in tray of KIT-0004”. */
async function whereElse(tx: Tx, lotId: string): Promise<string[]> {
  const title = placeTitle({ kind: 'b.place_kind', ref: 'b.place_ref' });
  const rows = await tx.$queryRawUnsafe<{ title: string; quantity: number }[]>(
    `SELECT ${title} AS title, b.on_hand AS quantity FROM balances b
     WHERE b.lot_id = $1::uuid AND b.on_hand > 0 AND b.place_kind NOT IN ('bin', 'quarantine', 'scrap') ORDER BY 1`,
    lotId,
  );
  return rows.map((row) => `${row.quantity} in ${row.title}`);
}
