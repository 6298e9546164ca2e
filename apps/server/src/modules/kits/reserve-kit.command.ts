import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { kitSubjects, openKit, touchKit } from './kit.ts';
import { causeOf, offer, promise, type Reserved, readShelf, shelfLocks, unpromised } from './reserve.ts';

/** Promise all that the shelf can give, line by line in the order of the list; the rest is named with its cause. */
export const reserveKit = defineCommand(kitsOperations.reserveKit, {
  async locks(input, tx) {
    const lines = await tx.kitLine.findMany({ where: { kitId: input.kitId }, select: { partId: true } });
    const parts = await shelfLocks(
      tx,
      lines.map(({ partId }) => partId),
    );
    return [`kit:${input.kitId}`, ...parts];
  },
  async execute(context) {
    const { tx, input, today } = context;
    const kit = await openKit(tx, input.kitId);
    const shelf = await readShelf(context, kit, kit.lines);
    const made: Reserved[] = [];
    const missing: { lineId: string; quantity: number; cause: string }[] = [];
    for (const line of kit.lines) {
      const quantity = unpromised(shelf, line);
      if (quantity === 0) continue;
      const choice = offer(shelf, { kit, line, quantity, today });
      made.push(...(await promise(context, shelf, { line, picks: choice.picks })));
      if (choice.left > 0) missing.push({ lineId: line.id, quantity: choice.left, cause: causeOf(shelf, kit, choice) });
    }
    const reply = await touchKit(tx, kit);
    const reserved = made.reduce((sum, each) => sum + each.quantity, 0);
    return {
      reply: { ...reply, reserved, missing },
      subjects: kitSubjects(kit, reply.version),
      facts: { kit: kit.code, reserved: made, missing },
    };
  },
});
