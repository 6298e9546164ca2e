import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { moveStock } from '../inventory/public.ts';
import { requireAuthorisation } from '../people/public.ts';
import { askIn } from './ask.ts';
import { type Kit, kitSubjects, type Line, lineOf, openKit, refuseStopped, touchKit } from './kit.ts';
import { figuresOf } from './line-figures.ts';

type TakingOff = Context<typeof kitsOperations.takeOff>;

/**
 * Teardown: the customer's own pieces come into the ledger (customer → unit) and off the unit into its rack. As-needed lines
 * are not whole pieces; they come off only where counted.
 */
export const takeOff = defineCommand(kitsOperations.takeOff, {
  async locks(input, tx) {
    const lines = await tx.kitLine.findMany({ where: { kitId: input.kitId }, select: { partId: true } });
    return [`kit:${input.kitId}`, ...lines.map(({ partId }) => `part:${partId}`)];
  },
  async execute(context) {
    const { tx, input, actor, today } = context;
    const kit = await openKit(tx, input.kitId);
    const authorisation = await requireAuthorisation(tx, actor, { process: 'teardown', level: 'perform', today });
    refuseStopped(kit);
    if (kit.workOrder.stage === 'received')
      throw new Problem('work-stopped', `${kit.workOrder.number} has not gone to teardown yet`, {
        workOrder: kit.workOrder.number,
      });
    const pieces = counted(kit, input.counted);
    await refuseTwice(context, kit, pieces);
    const prefix = await codePrefix(context, kit);
    const rack: { lotId: string; lotCode: string; lineId: string; quantity: number }[] = [];
    for (const { line, quantity } of pieces) {
      if (quantity === 0) continue;
      const lotCode = `${prefix}-${String(line.sequence).padStart(2, '0')}`;
      rack.push({
        lotId: await intoRack(context, kit, { line, quantity, lotCode }),
        lotCode,
        lineId: line.id,
        quantity,
      });
    }
    const reply = await touchKit(tx, kit);
    return {
      reply: { ...reply, rack },
      subjects: kitSubjects(kit, reply.version),
      facts: {
        kit: kit.code,
        rack,
        notThere: pieces.filter(({ quantity }) => quantity === 0).map(({ line }) => line.id),
      },
      authorisation,
    };
  },
});

/** What comes off, line by line: as the list says, unless something else was counted. Parts added by findings were never on. */
function counted(kit: Kit, given: readonly { lineId: string; quantity: number }[]) {
  const stated = new Map(given.map(({ lineId, quantity }) => [lineOf(kit, lineId).id, quantity]));
  return kit.lines.flatMap((line) => {
    const quantity =
      stated.get(line.id) ?? (line.minimum === null && line.findingId === null ? line.quantity : undefined);
    return quantity === undefined ? [] : [{ line, quantity }];
  });
}

async function refuseTwice({ tx }: TakingOff, kit: Kit, pieces: { line: Line }[]): Promise<void> {
  const figures = await figuresOf(askIn(tx), [kit.id]);
  const twice = pieces.find(({ line }) => figures(line.id).cameOn > 0);
  if (twice)
    throw new Problem('already-taken-off', `${twice.line.part.number} at ${twice.line.position} was taken off before`, {
      lineId: twice.line.id,
    });
}

/** Tags read like `WO-1001-07`; those of a later kit of the same work order like `WO-1001-B-07`. */
async function codePrefix({ tx }: TakingOff, kit: Kit): Promise<string> {
  const earlier = await tx.kit.count({ where: { workOrderId: kit.workOrderId, createdAt: { lt: kit.createdAt } } });
  return earlier === 0 ? kit.workOrder.number : `${kit.workOrder.number}-${String.fromCharCode(65 + earlier)}`;
}

async function intoRack(
  context: TakingOff,
  kit: Kit,
  { line, quantity, lotCode }: { line: Line; quantity: number; lotCode: string },
): Promise<string> {
  const lot = { id: context.newId(), code: lotCode, partId: line.partId };
  await context.tx.lot.create({
    data: {
      ...lot,
      ...{ state: 'quarantine', origin: 'taken-off', sourceClass: 'used-serviceable', unitPrice: '0' },
      ownerId: kit.workOrder.customerId,
      workOrderId: kit.workOrderId,
      receivedAt: context.now,
      note: line.position,
    },
  });
  const move = { lot, quantity, position: line.position, kitLineId: line.id };
  const unit = { kind: 'unit', ref: kit.workOrderId } as const;
  const customer = { kind: 'customer', ref: kit.workOrder.customerId } as const;
  await moveStock(context, { ...move, from: customer, to: unit, reason: 'came with the unit' });
  await moveStock(context, { ...move, from: unit, to: { kind: 'rack', ref: kit.workOrderId }, reason: 'taken off' });
  return lot.id;
}
