import { Problem } from '@hubwright/contracts/problems';
import type { Subject } from '../../platform/command/command.ts';
import { askIn } from './ask.ts';
import { type Kit, type KitContext, type Line, theKit } from './kit.ts';
import { figuresOf } from './line-figures.ts';

/**
 * A finding no longer asks for its parts: lines added for it go, positions that counted on the unit's own piece count on it
 * again, and what was promised is free. Throws `disposition-carried-out` while a piece is out of its bin for it, or where the
 * old piece is no longer there to go back. Call under `kitsOf` locks. Answers the kits it changed.
 */
export async function withdrawDemand(
  context: KitContext,
  finding: { readonly id: string; readonly number: string; readonly workOrderId: string },
): Promise<Subject[]> {
  const { tx } = context;
  const kits = await tx.kit.findMany({
    where: { workOrderId: finding.workOrderId, lines: { some: { findingId: finding.id } } },
    orderBy: { id: 'asc' },
    select: { id: true },
  });
  const changed: Subject[] = [];
  for (const { id } of kits) {
    const kit = await theKit(tx, id);
    const lines = kit.lines.filter(({ findingId }) => findingId === finding.id);
    for (const line of lines) await refuseIssued(context, { kit, line, number: finding.number });
    for (const line of lines) await takeBack(context, kit, line);
    await tx.kit.update({ where: { id }, data: { version: kit.version + 1 } });
    changed.push({ kind: 'kit', id, before: kit.version, after: kit.version + 1 });
  }
  return changed;
}

interface Withdrawn {
  readonly kit: Kit;
  readonly line: Line;
  readonly number: string;
}

async function refuseIssued({ tx }: KitContext, { kit, line, number }: Withdrawn): Promise<void> {
  const { inTray, installed, inRack, atVendor, cameOn } = (await figuresOf(askIn(tx), [kit.id]))(line.id);
  const what = `${line.part.number} at ${line.position}`;
  const facts = { part: line.part.number, kit: kit.code, position: line.position };
  if (inTray > 0)
    throw new Problem(
      'disposition-carried-out',
      `${inTray} × ${what} for ${number} ${inTray === 1 ? 'lies' : 'lie'} in the tray of ${kit.code}: bring it back to its bin first`,
      facts,
    );
  const fromTray = await tx.movement.count({ where: { kitLineId: line.id, fromKind: 'tray', toKind: 'unit' } });
  if (installed > 0 && fromTray > 0)
    throw new Problem(
      'disposition-carried-out',
      `${what} for ${number} is in the unit: take it out and bring it back to its bin first`,
      facts,
    );
  if (cameOn > 0 && inRack + atVendor + installed < line.quantity)
    throw new Problem(
      'disposition-carried-out',
      `The old ${what} left the rack and cannot go back: raise a new finding on what takes its place`,
      facts,
    );
}

/** A line of the kit list that became new-only for the finding counts on the unit's own piece again; an added line goes. */
async function takeBack({ tx }: KitContext, kit: Kit, line: Line): Promise<void> {
  await tx.reservation.deleteMany({ where: { kitLineId: line.id } });
  if (line.listLineId === null) {
    await tx.kitLine.delete({ where: { id: line.id } });
    return;
  }
  const rest = kit.lines.find(
    ({ id, listLineId, position, source, findingId }) =>
      id !== line.id &&
      listLineId === line.listLineId &&
      position === line.position &&
      source !== 'new' &&
      findingId === null,
  );
  if (rest) {
    await tx.kitLine.update({ where: { id: rest.id }, data: { quantity: { increment: line.quantity } } });
    await tx.kitLine.delete({ where: { id: line.id } });
    return;
  }
  const listed = await tx.kitListLine.findUniqueOrThrow({ where: { id: line.listLineId }, select: { source: true } });
  await tx.kitLine.update({ where: { id: line.id }, data: { source: listed.source, findingId: null } });
}
