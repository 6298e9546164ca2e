import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { binExists, moveStock, type Place, scrap } from '../inventory/public.ts';
import { balanceLock, refuseUnless, stepOn, theBalance, type WholeBalance } from './field-balance.ts';
import { mayBalance } from './supervised.ts';

const operation = fieldBalanceOperations.takeOffFieldWeights;

/** What comes off goes back to a bin, or to scrap: never nowhere. */
export const takeOffWeights = defineCommand(operation, {
  async locks(input, tx) {
    const lot = await tx.lot.findUnique({ where: { code: input.lotCode } });
    return [balanceLock(input), ...(lot ? [`part:${lot.partId}`] : [])];
  },
  async execute(context) {
    const { tx, input, actor, now, entryId, newId } = context;
    const balance = await theBalance(context, input.fieldBalanceId);
    refuseUnless(balance, ['set-up', 'runs', 'weights-fitted']);
    const authorisation = await mayBalance(context, balance);
    const { lot, mass } = standingHere(context, balance);
    if (input.bin !== undefined) await binExists(tx, input.bin);
    const to: Place = input.bin === undefined ? scrap : { kind: 'bin', ref: input.bin };
    const { movementId } = await moveStock(context, {
      ...{ lot, quantity: input.pieces, from: { kind: 'unit', ref: balance.id }, to },
      ...{ reason: input.reason, position: input.place },
    });
    const { place } = input;
    const row = { id: newId(), fieldBalanceId: balance.id, place, lotId: lot.id, pieces: -input.pieces, mass };
    const done = { movementId, reason: input.reason, doneBy: actor.personId, doneAt: now, entryId };
    await tx.fieldWeight.create({ data: { ...row, ...done } });
    const state = balance.state === 'set-up' ? 'set-up' : 'weights-fitted';
    const { version, subject } = await stepOn(tx, balance, { state });
    return {
      reply: { id: balance.id, version, movementId },
      subjects: [subject, { kind: 'lot', id: lot.id }],
      authorisation: { ...authorisation },
      facts: { number: balance.number, place, lot: lot.code, pieces: input.pieces, to: input.bin ?? 'scrap' },
      reason: input.reason,
    };
  },
});

/** The weight in question; throws `not-there` unless that many pieces of it are in the place. */
function standingHere({ input }: Context<typeof operation>, { weights }: WholeBalance) {
  const here = weights.filter(({ place, lot }) => place === input.place && lot.code === input.lotCode);
  const there = here.reduce((sum, { pieces }) => sum + pieces, 0);
  if (there >= input.pieces) return found(here[0], 'This weight');
  throw new Problem('not-there', `${input.place} has ${there} of ${input.lotCode}`, { there }, [
    { pointer: '/pieces', detail: `There are ${there}` },
  ]);
}
