import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { listOf } from './make-kit.ts';

/** A line of the kit list that is in no kit of the unit: its serial is not read yet, or was read after the kit was made. */
export interface WaitingLine {
  readonly part: string;
  readonly description: string;
  readonly issueUnit: string;
  readonly position: string;
  readonly quantity: number;
  /** The serials it is for, in words. */
  readonly serials: string;
  readonly why: 'serial-unread' | 'not-in-kit';
}

/** What the list of the unit's revision may still ask for beside its kits. Reads only. */
export async function waitingLines(tx: Tx, workOrderId: string): Promise<WaitingLine[]> {
  const { list } = await listOf(tx, workOrderId);
  const inKits = await tx.kitLine.findMany({
    where: { kit: { workOrderId, state: { not: 'cancelled' } } },
    select: { listLineId: true, position: true },
  });
  const known = new Set(inKits.map(keyOf));
  const missing = list.lines.filter((line) => !known.has(keyOf(line)));
  const asked = [
    ...list.undecided.map((line) => ({
      ...line,
      position: line.per === 'blade' ? `each blade, ${line.position}` : line.position,
      serials: rangeInWords(line),
      why: 'serial-unread' as const,
    })),
    ...missing.map((line) => ({ ...line, serials: '', why: 'not-in-kit' as const })),
  ];
  if (asked.length === 0) return [];
  const parts = await tx.part.findMany({
    where: { id: { in: asked.map(({ partId }) => partId) } },
    select: { id: true, number: true, description: true, issueUnit: true },
  });
  const named = new Map(parts.map((part) => [part.id, part]));
  return asked.map(({ partId, position, quantity, serials, why }) => {
    const { number = '', description = '', issueUnit = 'piece' } = named.get(partId) ?? {};
    return { part: number, description, issueUnit, position, quantity, serials, why };
  });
}

/** The same for a view. Nothing is written on this way, so the read-only models serve as well. */
export function waitingForView(models: Reads['models'], workOrderId: string): Promise<WaitingLine[]> {
  return waitingLines(models as unknown as Tx, workOrderId);
}

/** One sentence a line, with what to do. */
export function waitingInWords({
  part,
  description,
  issueUnit,
  position,
  quantity,
  serials,
  why,
}: WaitingLine): string {
  const what = `${partWords(quantity, { number: part, description, issueUnit })} at ${position}`;
  return why === 'serial-unread'
    ? `${what} is for ${serials}, and the serial of the unit is not read yet: have it read, then add the line to the kit.`
    : `${what} is listed for this unit and not in its kit: add it to the kit.`;
}

function keyOf(line: { listLineId: string | null; position: string }): string {
  return `${line.listLineId} ${line.position}`;
}

function rangeInWords({ serialFrom, serialTo }: { serialFrom?: string; serialTo?: string }): string {
  if (serialFrom !== undefined && serialTo !== undefined) return `serials ${serialFrom} to ${serialTo}`;
  return serialFrom === undefined ? `serials up to ${serialTo}` : `serials from ${serialFrom} on`;
}
