import { freezerOperations } from '@hubwright/contracts/inventory/freezer-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { outTimeAt } from './frozen-lot.ts';
import { lotLocks, theLot } from './lot.ts';

const operation = freezerOperations.moveFrozenLot;

/** Out of the freezer, or back in. The log goes forward, so that no time out of it is ever lost. */
export const moveFrozenLot = defineCommand(operation, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input, actor, now, newId, entryId, expectedVersion } = context;
    const lot = await theLot(tx, input.lotId);
    sameVersion(lot.version, expectedVersion);
    const hours = lot.part.outTimeHours;
    if (hours === null) throw new Problem('freezer-wrong', `${lot.part.number} is not kept frozen`);
    const moves = await tx.freezerMove.findMany({
      where: { lotId: lot.id },
      orderBy: [{ at: 'asc' }, { id: 'asc' }],
      take: 2000,
    });
    const at = atOf(context, { code: lot.code, last: moves.at(-1) });
    const move = { id: newId(), lotId: lot.id, to: input.to, at };
    await tx.freezerMove.create({ data: { ...move, personId: actor.personId, entryId } });
    const version = lot.version + 1;
    await tx.lot.update({ where: { id: lot.id }, data: { version } });
    const outMinutes = Math.ceil(outTimeAt([...moves, move], { hours, at: now }).out / 60_000);
    return {
      reply: { id: lot.id, version, outMinutes },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { code: lot.code, to: input.to, at: at.toISOString(), outMinutes },
    };
  },
});

/** Throws `freezer-wrong` when it is there already, `taken-at-wrong` for the future or before its last move. */
function atOf(
  { input, now }: Context<typeof operation>,
  { code, last }: { code: string; last: { to: string; at: Date } | undefined },
): Date {
  if ((last?.to ?? 'in') === input.to)
    throw new Problem('freezer-wrong', `${code} is ${input.to === 'out' ? 'out of' : 'in'} the freezer already`);
  const at = input.at === undefined ? now : new Date(input.at);
  const refuse = (detail: string) => new Problem('taken-at-wrong', detail, {}, [{ pointer: '/at', detail }]);
  if (at > now) throw refuse('This lies in the future');
  if (last && at < last.at) throw refuse('This lies before its last move');
  return at;
}
