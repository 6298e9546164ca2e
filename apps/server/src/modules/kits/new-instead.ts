import type { Kit, KitContext, Line } from './kit.ts';

/**
 * Pieces of a line that may not go back are asked of stock instead: the line becomes new-only, or is split when only some of
 * its pieces are replaced. Answers the line that now asks for new ones.
 */
export async function newInstead(
  { tx, newId, now }: KitContext,
  kit: Kit,
  replaced: { line: Line; quantity: number; findingId?: string | undefined },
): Promise<string> {
  const { line, quantity, findingId } = replaced;
  if (line.source === 'new') return line.id;
  if (quantity >= line.quantity) {
    await tx.kitLine.update({
      where: { id: line.id },
      data: { source: 'new', askedLaterAt: now, ...(findingId ? { findingId } : {}) },
    });
    return line.id;
  }
  await tx.kitLine.update({ where: { id: line.id }, data: { quantity: { decrement: quantity } } });
  const id = newId();
  await tx.kitLine.create({
    data: {
      id,
      kitId: kit.id,
      sequence: await nextSequence(tx, kit.id),
      partId: line.partId,
      position: line.position,
      quantity,
      source: 'new',
      listLineId: line.listLineId,
      findingId: findingId ?? line.findingId,
      askedLaterAt: now,
    },
  });
  return id;
}

export async function nextSequence(tx: KitContext['tx'], kitId: string): Promise<number> {
  const last = await tx.kitLine.aggregate({ where: { kitId }, _max: { sequence: true } });
  return (last._max.sequence ?? 0) + 1;
}
