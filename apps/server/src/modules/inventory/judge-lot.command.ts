import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { requireAuthorisation } from '../people/public.ts';
import { binExists, lotLocks, onHandAt, refuseSuspected, theLot } from './lot.ts';
import { moveStock } from './move-stock.ts';
import { type Place, quarantine } from './place.ts';

type JudgedLot = Awaited<ReturnType<typeof theLot>>;

/** Accept or reject, once, by a person authorised for stock acceptance. Accepted pieces may go straight to their bin. */
export const judgeLot = defineCommand(inventoryOperations.judgeLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input, actor, today } = context;
    const lot = await theLot(tx, input.lotId);
    sameVersion(lot.version, context.expectedVersion);
    const authorisation = await requireAuthorisation(tx, actor, {
      process: 'stock-acceptance',
      level: 'inspect',
      today,
    });
    refuseSuspected(lot);
    if (lot.state !== 'quarantine' || lot.origin === 'taken-off')
      throw new Problem('lot-not-waiting', `${lot.code} is ${lot.state}`, { lot: lot.code });
    if (input.verdict === 'accepted') refuseUnfit(lot, today);
    if (input.verdict === 'accepted' && !input.note) await refuseWithoutReason(context, lot);
    const judged = await tx.lot.update({
      where: { id: lot.id },
      data: { state: input.verdict, version: { increment: 1 } },
    });
    const moved = await toPlace(context, lot);
    const version = moved?.version ?? judged.version;
    return {
      reply: { id: lot.id, version, movementId: moved?.movementId ?? null },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { code: lot.code, verdict: input.verdict, certificate: lot.certificate, bin: input.bin ?? null },
      authorisation,
      ...(input.note ? { reason: input.note } : {}),
    };
  },
});

function refuseUnfit(lot: JudgedLot, today: string): void {
  if (lot.part.certificateRequired && lot.certificate === '')
    throw new Problem('certificate-missing', `${lot.code} came without the certificate that ${lot.part.number} needs`, {
      lot: lot.code,
    });
  if (lot.expiresOn && fromDbDate(lot.expiresOn) <= today)
    throw new Problem('lot-expired', `${lot.code} expired on ${fromDbDate(lot.expiresOn)}`, { lot: lot.code });
}

/** What was found not good on receipt is accepted only by somebody who says why it may be used all the same. */
async function refuseWithoutReason(
  { tx }: Context<typeof inventoryOperations.judgeLot>,
  lot: JudgedLot,
): Promise<void> {
  const receipt = await tx.lotReceipt.findFirst({ where: { lotId: lot.id }, select: { answers: true } });
  const answers = (receipt?.answers ?? []) as { answer: string; note: string }[];
  const notGood = answers.filter(({ answer }) => answer === 'not-good').map(({ note }) => note);
  if (notGood.length === 0) return;
  throw new Problem('found-not-good', `${lot.code} was found not good on receipt: ${notGood.join('; ')}`, {}, [
    { pointer: '/note', detail: 'Say why it may be used all the same' },
  ]);
}

/** Accepted pieces go to the bin named; a customer's rejected ones are held apart as theirs. */
async function toPlace(context: Context<typeof inventoryOperations.judgeLot>, lot: JudgedLot) {
  const { tx, input } = context;
  const rejected = input.verdict === 'rejected';
  if (rejected ? !lot.ownerId : !input.bin) return undefined;
  if (!rejected && input.bin) await binExists(tx, input.bin);
  const quantity = await onHandAt(tx, lot.id, quarantine);
  if (quantity === 0) return undefined;
  const to: Place = rejected ? { kind: 'held', ref: lot.ownerId ?? '' } : { kind: 'bin', ref: input.bin ?? '' };
  const reason = rejected ? 'rejected, held for its owner' : 'put away';
  return moveStock(context, { lot, quantity, from: quarantine, to, reason });
}
