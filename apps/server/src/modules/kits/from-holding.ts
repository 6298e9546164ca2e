import { quantityText } from '@hubwright/contracts/inventory/quantity';
import { Problem, type ProblemType } from '@hubwright/contracts/problems';
import { type Moved, moveStock, type Place } from '../inventory/public.ts';
import { askIn } from './ask.ts';
import { type Held, heldAt } from './held.ts';
import type { Kit, KitContext, Line } from './kit.ts';

type Holding = 'tray' | 'rack' | 'unit';

const emptyHanded: Record<Holding, ProblemType> = { tray: 'not-in-tray', rack: 'not-in-rack', unit: 'not-in-unit' };
const words: Record<Holding, string> = { tray: 'the tray', rack: 'the rack', unit: 'the unit' };

export function holding(kit: Kit, kind: Holding): Place & { kind: Holding } {
  return { kind, ref: kind === 'tray' ? kit.id : kit.workOrderId };
}

/** The pieces of a scanned lot in tray, rack or unit of this kit, or the problem that they are not there. */
export async function scannedAt(
  { tx }: KitContext,
  kit: Kit,
  scan: { kind: Holding; code: string; lineId?: string | undefined },
): Promise<Held[]> {
  const known = await tx.lot.findUnique({ where: { code: scan.code }, select: { id: true } });
  if (!known) throw new Problem('unknown-scan', `${scan.code} is not the code of a lot`);
  const ofKit = new Set(kit.lines.map(({ id }) => id));
  const all = (await heldAt(askIn(tx), holding(kit, scan.kind))).filter(({ lotCode }) => lotCode === scan.code);
  const here = all.filter(({ lineId }) =>
    scan.lineId === undefined ? lineId === null || ofKit.has(lineId) : lineId === scan.lineId,
  );
  if (here.length > 0) return here;
  const elsewhere = all.map(({ position }) => position).join(', ');
  const detail = elsewhere
    ? `${scan.code} is in ${words[scan.kind]} for ${elsewhere}`
    : `${scan.code} is not in ${words[scan.kind]} of ${kit.code}`;
  throw new Problem(emptyHanded[scan.kind], detail, { lot: scan.code, kit: kit.code });
}

/** Shares a quantity over the lines that hold it, last line first to go back; all of it without a quantity. */
export function takeFrom(held: readonly Held[], quantity: number | undefined): Held[] {
  const all = held.reduce((sum, each) => sum + each.quantity, 0);
  if (quantity === undefined) return [...held];
  if (quantity > all)
    throw new Problem(
      'not-enough',
      `There are ${quantityText(all, held[0]?.part.issueUnit ?? 'piece')} of ${held[0]?.lotCode}`,
      { lot: held[0]?.lotCode, quantity: all },
      [{ pointer: '/quantity', detail: `There are ${all}` }],
    );
  let left = quantity;
  return [...held].reverse().flatMap((each) => {
    const taken = Math.min(left, each.quantity);
    left -= taken;
    return taken > 0 ? [{ ...each, quantity: taken }] : [];
  });
}

/** Moves held pieces on, each under the kit line it is for. */
export async function moveHeld(
  context: KitContext,
  held: readonly Held[],
  route: { from: Place; to: Place; reason: string },
): Promise<Moved[]> {
  const moved: Moved[] = [];
  for (const each of held) {
    moved.push(
      await moveStock(context, {
        ...route,
        lot: { id: each.lotId, code: each.lotCode, partId: each.part.id },
        quantity: each.quantity,
        kitLineId: each.lineId ?? undefined,
        position: each.position || undefined,
      }),
    );
  }
  return moved;
}

/** How many go in: as asked, or as many as there are and fit. */
export function wanted(line: Line, given: { room: number; held: readonly Held[]; asked: number | undefined }): number {
  const { room, held, asked } = given;
  const there = held.reduce((sum, { quantity }) => sum + quantity, 0);
  if (room > 0 && (asked ?? 1) <= room) return asked ?? Math.min(room, there);
  throw new Problem(
    'more-than-needed',
    `${line.position} takes ${quantityText(room, line.part.issueUnit)} more of ${line.part.number}`,
    { needed: room },
    [{ pointer: '/quantity', detail: `Still needed: ${room}` }],
  );
}
