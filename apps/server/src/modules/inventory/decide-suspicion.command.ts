import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { requireAuthorisation } from '../people/public.ts';
import { lotLocks, theLot } from './lot.ts';
import { writeStockSignature } from './stock-signature.ts';

const operation = handlingOperations.decideSuspicion;

/** Cleared is not accepted: the lot goes back to be judged like any that arrives. Confirmed is rejected for good. */
export const decideSuspicion = defineCommand(operation, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input, actor, today, now } = context;
    const lot = await theLot(tx, input.lotId);
    sameVersion(lot.version, context.expectedVersion);
    const process = 'stock-acceptance';
    const authorisation = await requireAuthorisation(tx, actor, { process, level: 'inspect', today });
    const open = await openSuspicion(context, lot);
    const { decision, basis, reportedTo } = input;
    await tx.suspicion.update({
      where: { id: open.id },
      data: { decision, basis, reportedTo, decidedBy: actor.personId, decidedAt: now },
    });
    const version = lot.version + 1;
    const state = decision === 'cleared' ? 'quarantine' : 'rejected';
    await tx.lot.update({ where: { id: lot.id }, data: { state, version } });
    const facts = { code: lot.code, part: lot.part.number, suspicion: open.reason, decision, basis, reportedTo };
    const contentHash = await writeStockSignature(context, {
      ...{ lotId: lot.id, kind: 'suspicion-decided', meaning: operation.signs ?? '', content: facts, authorisation },
    });
    return {
      reply: { id: lot.id, version },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { ...facts, contentHash },
      authorisation,
      reason: basis,
    };
  },
});

async function openSuspicion(
  { tx, actor }: Pick<Context<typeof operation>, 'tx' | 'actor'>,
  lot: { id: string; code: string },
) {
  const open = await tx.suspicion.findFirst({ where: { lotId: lot.id, decision: null } });
  if (!open) throw new Problem('not-suspected', `${lot.code} is under no suspicion`, { lot: lot.code });
  if (open.reportedBy === actor.personId)
    throw new Problem('second-person-needed', `You reported ${lot.code}: another inspector decides`, { lot: lot.code });
  return open;
}
