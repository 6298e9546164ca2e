import { addDays } from '@hubwright/rules/dates';
import { found } from '../../platform/command/version.ts';
import type { KitContext, Line } from './kit.ts';
import { theKit } from './kit.ts';
import { startKit } from './make-kit.ts';
import { newInstead, nextSequence } from './new-instead.ts';

/** Until someone sets the day, parts asked for where no list asked for any are planned two weeks ahead; common practice, no source. */
const daysUntilBuild = 14;

export interface FindingDemand {
  readonly workOrderId: string;
  readonly findingId: string;
  readonly parts: readonly { readonly partId: string; readonly position: string; readonly quantity: number }[];
}

/**
 * Parts a finding asks for, new. Where the kit counted on the unit's own piece at that position, a new one takes its place;
 * otherwise a line is added. Call under `kitsOf` locks. Answers kit and lines.
 */
export async function addDemandFromFinding(
  context: KitContext,
  demand: FindingDemand,
): Promise<{ kitId: string; kitCode: string; lineIds: string[] }> {
  const { tx } = context;
  const kit = await theKit(tx, await openKitOf(context, demand.workOrderId));
  const lineIds: string[] = [];
  for (const part of demand.parts) {
    const own = kit.lines.find(
      ({ partId, position, source }) => partId === part.partId && position === part.position && source !== 'new',
    );
    const replaced = own ? Math.min(own.quantity, part.quantity) : 0;
    if (own)
      lineIds.push(await newInstead(context, kit, { line: own, quantity: replaced, findingId: demand.findingId }));
    if (part.quantity > replaced)
      lineIds.push(
        await addLine(context, {
          ...part,
          kitId: kit.id,
          quantity: part.quantity - replaced,
          findingId: demand.findingId,
        }),
      );
  }
  await tx.kit.update({ where: { id: kit.id }, data: { version: { increment: 1 } } });
  return { kitId: kit.id, kitCode: kit.code, lineIds };
}

/** The open kit of a work order, made where there is none. */
export async function openKitOf(context: KitContext, workOrderId: string): Promise<string> {
  const { tx, today } = context;
  const open = await tx.kit.findFirst({ where: { workOrderId, state: 'open' }, orderBy: { createdAt: 'desc' } });
  if (open) return open.id;
  const workOrder = found(await tx.workOrder.findUnique({ where: { id: workOrderId } }), 'This work order');
  const { revisionId } = workOrder;
  return (await startKit(context, { workOrderId, revisionId, needBy: addDays(today, daysUntilBuild) })).id;
}

async function addLine(
  { tx, newId, now }: KitContext,
  line: Pick<Line, 'kitId' | 'partId' | 'position' | 'quantity'> & { findingId: string },
): Promise<string> {
  const id = newId();
  const { kitId, partId, position, quantity, findingId } = line;
  const sequence = await nextSequence(tx, kitId);
  const asked = { source: 'new', findingId, askedLaterAt: now };
  await tx.kitLine.create({ data: { id, sequence, kitId, partId, position, quantity, ...asked } });
  return id;
}
