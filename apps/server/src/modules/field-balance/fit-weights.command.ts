import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { lotByCode, moveStock } from '../inventory/public.ts';
import {
  balanceLock,
  dataOf,
  effectiveRuns,
  refuseUnless,
  setUpOf,
  stepOn,
  theBalance,
  type WholeBalance,
} from './field-balance.ts';
import { refuseUnusedPlane } from './run-checks.ts';
import { mayBalance } from './supervised.ts';
import { type Piece, piecesOf } from './usable-pieces.ts';
import { planeOf, refuseTooHeavy, standingOf } from './weights.ts';

const operation = fieldBalanceOperations.fitFieldWeights;
type Fitting = Context<typeof operation>;

/** Pieces go from their bin onto the propeller, through the ledger like every part; the places and limits of the model hold. */
export const fitWeights = defineCommand(operation, {
  async locks(input, tx) {
    const lots = await tx.lot.findMany({ where: { code: { in: input.weights.map(({ lotCode }) => lotCode) } } });
    return [balanceLock(input), ...new Set(lots.map(({ partId }) => `part:${partId}`))];
  },
  async execute(context) {
    const { tx, input } = context;
    const balance = await theBalance(context, input.fieldBalanceId);
    refuseUnless(balance, ['runs', 'weights-fitted']);
    const authorisation = await mayBalance(context, balance);
    if (!balance.spec || effectiveRuns(balance).length === 0)
      throw new Problem('run-out-of-turn', 'Weights are fitted after the baseline of this set-up');
    const fitted = await piecesOf(context, balance);
    const data = dataOf(balance.spec);
    const sheet = setUpOf(balance)?.sheet ?? { counting: data.counting };
    for (const [at, { place }] of fitted.entries())
      refuseUnusedPlane({ sheet }, planeOf(data, place), `/weights/${at}/place`);
    refuseTooHeavy(
      data,
      [
        ...standingOf(balance),
        ...fitted.map(({ place, pieces, mass }) => ({ place, pieces, mass: pieces * Number(mass) })),
      ],
      '/weights',
    );
    const movementIds: string[] = [];
    for (const piece of fitted) movementIds.push(...(await fit(context, balance, piece)));
    const { version, subject } = await stepOn(tx, balance, { state: 'weights-fitted' });
    return {
      reply: { id: balance.id, version, movementIds },
      subjects: [subject, ...[...new Set(fitted.map(({ lot }) => lot.id))].map((id) => ({ kind: 'lot', id }))],
      authorisation: { ...authorisation },
      facts: {
        number: balance.number,
        weights: fitted.map(({ place, pieces, lot, mass }) => ({
          place,
          pieces,
          lot: lot.code,
          part: lot.partNumber,
          mass,
        })),
      },
    };
  },
});

async function fit(context: Fitting, balance: WholeBalance, piece: Piece): Promise<string[]> {
  const { tx, actor, now, entryId, newId } = context;
  const { place, lot, mass } = piece;
  const to = { kind: 'unit', ref: balance.id } as const;
  const ids: string[] = [];
  // As it is now: the same lot may have been drawn on for another place a moment ago.
  const { bins } = (await lotByCode(tx, lot.code)) ?? lot;
  let left = piece.pieces;
  for (const { bin, onHand } of bins) {
    const quantity = Math.min(left, onHand);
    if (quantity === 0) continue;
    const from = { kind: 'bin', ref: bin } as const;
    const reason = `balance ${balance.number}`;
    const { movementId } = await moveStock(context, { lot, quantity, from, to, reason, position: place });
    const row = { id: newId(), fieldBalanceId: balance.id, place, lotId: lot.id, pieces: quantity, mass, movementId };
    await tx.fieldWeight.create({ data: { ...row, doneBy: actor.personId, doneAt: now, entryId } });
    ids.push(movementId);
    left -= quantity;
  }
  return ids;
}
