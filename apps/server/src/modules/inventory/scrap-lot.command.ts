import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { lotLocks, refuseSuspected, theLot } from './lot.ts';
import { moveStock } from './move-stock.ts';
import { binOrQuarantine, type Place, scrap } from './place.ts';
import { freeWhatIsGone } from './reservations.ts';
import { refuseOwnWitness, writeStockSignature } from './stock-signature.ts';

const operation = handlingOperations.scrapLot;
type Scrapping = Context<typeof operation>;
type ScrappedLot = Awaited<ReturnType<typeof theLot>>;

/** Pieces are made unusable before a witness. A customer's are only after the owner gave them up in writing. */
export const scrapLot = defineCommand(operation, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input, actor } = context;
    refuseOwnWitness(input.witnessId, actor);
    const lot = await theLot(tx, input.lotId);
    refuseSuspected(lot);
    const letter = lot.ownerId ? await givenUp(context, lot) : undefined;
    const from = placeOf(context, lot);
    const { quantity, reason } = input;
    const { movementId, version } = await moveStock(context, { lot, quantity, from, to: scrap, reason });
    const freed = await freeWhatIsGone(tx, lot.id);
    const facts = { code: lot.code, part: lot.part.number, quantity, from: input.bin ?? from.kind, reason, ...letter };
    const contentHash = await writeStockSignature(context, {
      lotId: lot.id,
      kind: lot.ownerId ? 'destroyed' : 'scrapped',
      meaning: operation.signs ?? '',
      witnessMeaning: operation.witnessed ?? '',
      content: facts,
    });
    return {
      reply: { id: lot.id, version, movementId, freed },
      subjects: [{ kind: 'lot', id: lot.id, before: lot.version, after: version }],
      facts: { ...facts, freed, witness: input.witnessId, contentHash },
      reason,
    };
  },
});

function placeOf({ input }: Scrapping, lot: ScrappedLot): Place {
  if (input.bin === undefined && lot.ownerId) return { kind: 'held', ref: lot.ownerId };
  return binOrQuarantine(input.bin);
}

async function givenUp({ tx }: Scrapping, lot: ScrappedLot) {
  const surrender = await tx.surrender.findFirst({ where: { lotId: lot.id }, orderBy: { at: 'desc' } });
  if (!surrender) throw new Problem('owned-by-customer', `${lot.code} is not the shop’s to scrap`, { lot: lot.code });
  return { letter: surrender.letter, dated: fromDbDate(surrender.dated), givenBy: surrender.givenBy };
}
