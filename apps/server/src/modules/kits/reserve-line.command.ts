import { quantityText } from '@hubwright/contracts/inventory/quantity';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { misfitProblem, needOf } from './fitting.ts';
import { type Kit, kitLocks, kitSubjects, type Line, lineOf, openKit, touchKit } from './kit.ts';
import { refuseBeforeOld } from './old-stock-first.ts';
import { causeOf, offer, promise, readShelf, type Shelf, shelfLocks, unpromised } from './reserve.ts';

type Reserving = Context<typeof kitsOperations.reserveLine>;

/** Promise stock to one line, by the rule or by naming a lot; partly when the shelf has less. */
export const reserveLine = defineCommand(kitsOperations.reserveLine, {
  async locks(input, tx) {
    const line = await tx.kitLine.findUnique({ where: { id: input.lineId }, select: { partId: true } });
    return [
      ...(await kitLocks(tx, input.kitId, input.lotId ? { id: input.lotId } : undefined)),
      ...(line ? await shelfLocks(tx, [line.partId]) : []),
    ];
  },
  async execute(context) {
    const { tx, input, today } = context;
    const kit = await openKit(tx, input.kitId);
    const line = lineOf(kit, input.lineId);
    const shelf = await readShelf(context, kit, [line]);
    const needed = unpromised(shelf, line);
    const quantity = input.quantity ?? needed;
    if (quantity === 0 || quantity > needed) throw tooMany(kit, line, needed);
    const asked = { kit, line, quantity, today };
    const picks = input.lotId ? await ofLot(context, shelf, { ...asked, lotId: input.lotId }) : byRule(shelf, asked);
    const reserved = await promise(context, shelf, { line, picks });
    const reply = await touchKit(tx, kit);
    const stillNeeds = needed - reserved.reduce((sum, each) => sum + each.quantity, 0);
    return {
      reply: { ...reply, reserved, stillNeeds },
      subjects: kitSubjects(
        kit,
        reply.version,
        reserved.map(({ lotId }) => lotId),
      ),
      facts: { kit: kit.code, part: line.part.number, position: line.position, reserved, stillNeeds },
    };
  },
});

function tooMany(kit: Kit, line: Line, needed: number): Problem {
  const detail =
    needed === 0
      ? `${kit.code} line ${line.sequence} needs nothing more from stock`
      : `${kit.code} line ${line.sequence} needs ${quantityText(needed, line.part.issueUnit)} more of ${line.part.number}`;
  return new Problem('more-than-needed', detail, { needed }, [{ pointer: '/quantity', detail: `Needed: ${needed}` }]);
}

function byRule(shelf: Shelf, asked: Parameters<typeof offer>[1]) {
  const choice = offer(shelf, asked);
  if (choice.picks.length > 0) return choice.picks;
  const { line, kit } = asked;
  throw new Problem('nothing-to-reserve', `${line.part.number} for ${kit.code}: ${causeOf(shelf, kit, choice)}`, {
    part: line.part.number,
    kit: kit.code,
  });
}

async function ofLot(
  { tx }: Reserving,
  shelf: Shelf,
  asked: { kit: Kit; line: Line; quantity: number; today: string; lotId: string },
) {
  const { kit, line, lotId } = asked;
  const named = found(await tx.lot.findUnique({ where: { id: lotId }, select: { code: true } }), 'This lot');
  const lot = shelf.lots.get(lotId);
  if (!lot) throw new Problem('not-enough', `Nothing of ${named.code} that fits lies in a bin`, { lot: named.code });
  const problem = misfitProblem(kit, lot, needOf(kit, shelf.usable(line.partId), asked.today));
  if (problem) throw problem;
  const early = shelf.usedUpFirst(line.partId, lot.partId);
  const old = [...shelf.lots.values()].filter(({ partId }) => early.includes(partId));
  refuseBeforeOld({ kit, lot, today: asked.today }, old);
  if (lot.onHand < asked.quantity)
    throw new Problem('not-enough', `${lot.code} has ${lot.onHand}`, { lot: lot.code, onHand: lot.onHand });
  if (lot.facts.free < asked.quantity)
    throw new Problem('lot-reserved', `Only ${lot.facts.free} of ${lot.code} are free`, {
      lot: lot.code,
      free: lot.facts.free,
    });
  return [{ lot: lot.id, quantity: asked.quantity }];
}
