import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { lotLocks, theLot } from './lot.ts';

/** The owner's letter: until it is on record, rejected parts are held as theirs. */
export const surrenderLot = defineCommand(handlingOperations.surrenderLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute({ tx, input, today, now, actor, entryId, newId, expectedVersion }) {
    const lot = await theLot(tx, input.lotId);
    sameVersion(lot.version, expectedVersion);
    if (!lot.ownerId) throw new Problem('not-a-customers', `${lot.code} is the shop’s own`, { lot: lot.code });
    const held = await tx.balance.findFirst({ where: { lotId: lot.id, placeKind: 'held', onHand: { gt: 0 } } });
    if (!held) throw new Problem('not-rejected', `Nothing of ${lot.code} is held as rejected`, { lot: lot.code });
    if (await tx.surrender.findFirst({ where: { lotId: lot.id } }))
      throw new Problem('already-surrendered', `${lot.code} was given up before`, { lot: lot.code });
    if (input.dated > today)
      throw new Problem('letter-in-future', `The letter is dated ${input.dated}`, {}, [
        { pointer: '/dated', detail: 'This lies in the future' },
      ]);
    const { letter, givenBy } = input;
    await tx.surrender.create({
      data: {
        ...{ id: newId(), lotId: lot.id, letter, givenBy, dated: toDbDate(input.dated) },
        ...{ recordedBy: actor.personId, at: now, entryId },
      },
    });
    const version = lot.version + 1;
    await tx.lot.update({ where: { id: lot.id }, data: { version } });
    return {
      reply: { id: lot.id, version },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { code: lot.code, letter, dated: input.dated, givenBy },
    };
  },
});
