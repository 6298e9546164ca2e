import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { requireAuthorisation } from '../people/public.ts';
import { peenedAnew, peenedAnewLocks } from './come-again.ts';
import { lotLocks, theLot } from './lot.ts';

/** What failed strips do not prove is done again: the step comes back behind what is signed, and a closed build opens for it. */
export const peenAgain = defineCommand(peeningOperations.peenAgain, {
  locks: async (input, tx) => {
    const locks = await lotLocks(tx, input.lotId);
    const orders = locks
      .filter((lock) => lock.startsWith('work-order:'))
      .map((lock) => lock.slice('work-order:'.length));
    return [...new Set([...locks, ...(await peenedAnewLocks(tx, orders))])];
  },
  async execute(context) {
    const { tx, input, actor, now, today, expectedVersion } = context;
    const lot = await theLot(tx, input.lotId, expectedVersion);
    if (lot.state !== 'held') throw new Problem('lot-not-held', `${lot.number} is ${lot.state}`);
    const need = { process: 'shot-peening', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const version = lot.version + 1;
    const decided = { decision: input.reason, decidedBy: actor.personId, decidedAt: now };
    await tx.peeningLot.update({ where: { id: lot.id }, data: { state: 'redone', ...decided, version } });
    await tx.peeningPart.updateMany({ where: { lotId: lot.id }, data: { open: false } });
    const stepIds = lot.parts.map(({ stepId }) => stepId);
    const { travelers, parts, subjects } = await peenedAnew(context, stepIds, {
      ...{ lot: lot.number, reason: input.reason },
    });
    return {
      reply: { id: lot.id, version, steps: parts },
      subjects: [{ kind: 'peening-lot', id: lot.id, before: lot.version, after: version }, ...subjects],
      authorisation: { ...authorisation },
      facts: { number: lot.number, travelers: travelers.map(({ number }) => number) },
      reason: input.reason,
    };
  },
});
