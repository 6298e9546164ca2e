import { importOperations } from '@hubwright/contracts/imports/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand, type Subject } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { joinWhole } from '../../platform/database/whole-tables.ts';
import { moveMany, quarantine } from '../inventory/public.ts';
import { requireAuthorisation } from '../people/public.ts';

interface WaitingLot {
  readonly id: string;
  readonly code: string;
  readonly partId: string;
  readonly part: string;
  readonly certificateMissing: boolean;
  readonly expired: boolean;
  readonly bin: string;
  readonly quantity: number;
}

const mostNamed = 50;
/** More lots than this would make one entry a link in too many chains: their movements name the entry all the same. */
const mostSubjects = 200;

/** One signature for the lots of an opening stock; what is not fit to be accepted stays where it is and is named. */
export const acceptOpeningStock = defineCommand(importOperations.acceptOpeningStock, {
  locks: () => ['imports'],
  async execute(context) {
    const { tx, input, actor, today } = context;
    found(await tx.importedTable.findUnique({ where: { id: input.importId }, select: { id: true } }), 'This import');
    const held = { process: 'stock-acceptance', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, held);
    await joinWhole(tx);
    const waiting = await waitingLots(tx, input.importId, today);
    const unfit = waiting.flatMap((lot) => whyNot(lot) ?? []);
    const fit = waiting.filter((lot) => whyNot(lot) === undefined);
    if (fit.length === 0) throw new Problem('nothing-to-accept', `${waiting.length} of its lots are in quarantine`);
    await tx.$executeRaw`
      UPDATE lots SET state = 'accepted' WHERE id = ANY(${fit.map(({ id }) => id)}::uuid[]) AND state = 'quarantine'`;
    await moveMany(
      context,
      fit.map((lot) => ({
        ...{ lot, quantity: lot.quantity, from: quarantine, to: { kind: 'bin', ref: lot.bin } as const },
        reason: 'put away',
      })),
    );
    return {
      reply: {
        ...{ id: input.importId, version: 1, accepted: fit.length, left: unfit.length },
        why: unfit.slice(0, mostNamed),
      },
      subjects: [{ kind: 'import', id: input.importId }, ...chainsOf(fit)],
      facts: {
        ...{ accepted: fit.length, left: unfit.length },
        lots: fit.slice(0, mostSubjects).map(({ code }) => code),
        leftLots: unfit.slice(0, mostNamed).map(({ code }) => code),
      },
      authorisation,
    };
  },
});

const chainsOf = (lots: readonly WaitingLot[]): Subject[] =>
  lots.length > mostSubjects ? [] : lots.map(({ id }) => ({ kind: 'lot', id }));

/** Locked in one order, so that nobody moves or judges one of them meanwhile. */
function waitingLots(tx: Tx, importId: string, today: string): Promise<WaitingLot[]> {
  return tx.$queryRaw<WaitingLot[]>`
    SELECT l.id, l.code, l.part_id AS "partId", p.number AS part, p.certificate_required AND l.certificate = '' AS "certificateMissing",
      coalesce(l.expires_on <= ${today}::date, false) AS expired, o.bin, b.on_hand AS quantity
    FROM opening_lots o JOIN lots l ON l.id = o.lot_id JOIN parts p ON p.id = l.part_id
    JOIN balances b ON b.lot_id = l.id AND b.place_kind = 'quarantine' AND b.on_hand > 0
    WHERE o.import_id = ${importId}::uuid AND l.state = 'quarantine' ORDER BY l.id FOR UPDATE OF l, b`;
}

function whyNot({ code, part, certificateMissing, expired }: WaitingLot): { code: string; detail: string } | undefined {
  if (certificateMissing) return { code, detail: `${code} has no certificate, and ${part} needs one` };
  return expired ? { code, detail: `${code} of ${part} is past its shelf life` } : undefined;
}
