import { holdOperations } from '@hubwright/contracts/kits/hold-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { quarantine, refuseSuspected, reportSuspicion, takeOutOfUse, theLot } from '../inventory/public.ts';
import { holding, moveHeld, scannedAt } from './from-holding.ts';
import { kitLocks, openKit } from './kit.ts';
import { scanned } from './scan-reply.ts';

type Holding = Context<typeof holdOperations.holdFromTray>;

/**
 * Whoever doubts a piece in a tray doubts its lot: the lot goes out of use, and what of it lies in this tray goes to quarantine. Where
 * the lot is out of use already, only the tray's pieces follow it.
 */
export const holdFromTray = defineCommand(holdOperations.holdFromTray, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { code: input.lotCode }),
  async execute(context) {
    const { tx, input } = context;
    const kit = await openKit(tx, input.kitId);
    const held = await scannedAt(context, kit, { kind: 'tray', code: input.lotCode });
    const freed = await outOfUse(context, held[0]?.lotId ?? '');
    const { reason, lotCode } = input;
    const moved = await moveHeld(context, held, { from: holding(kit, 'tray'), to: quarantine, reason });
    const movementIds = moved.map(({ movementId }) => movementId);
    const did = `held as ${input.as === 'suspected' ? 'suspected unapproved parts' : 'in doubt'}`;
    const done = await scanned(context, kit, { lotCode, held, movementIds, did });
    return { ...done, reply: { ...done.reply, freed }, facts: { ...done.facts, freed }, reason };
  },
});

async function outOfUse(context: Holding, lotId: string) {
  const { tx, input } = context;
  const { as, reason } = input;
  const lot = await theLot(tx, lotId);
  if (lot.origin === 'taken-off') throw new Problem('not-stock', `${lot.code} came off a unit`, { lot: lot.code });
  if (lot.state === as) return [];
  refuseSuspected(lot);
  if (as === 'suspected') return (await reportSuspicion(context, lot, reason)).freed;
  if (lot.state !== 'accepted')
    throw new Problem('lot-not-accepted', `${lot.code} is ${lot.state}: bring it back from the tray`, {
      lot: lot.code,
    });
  return (await takeOutOfUse(context, lot, { state: 'quarantine', reason })).freed;
}
