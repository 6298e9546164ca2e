import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Context, Subject } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

/** What every kit command works with, whichever operation it is. */
export type KitContext = Pick<
  Context<Operation>,
  'tx' | 'now' | 'today' | 'actor' | 'entryId' | 'newId' | 'expectedVersion'
>;

/** What a kit is read with. */
export const withWork = {
  workOrder: { include: { customer: { select: { id: true, name: true, acceptedSources: true } } } },
  lines: { orderBy: { sequence: 'asc' }, include: { part: true } },
} as const;

export type Kit = Awaited<ReturnType<typeof theKit>>;
export type Line = Kit['lines'][number];

/** A kit with its lines, its work order and the customer, or `not-found`. */
export async function theKit(tx: Tx, kitId: string) {
  return found(
    await tx.kit.findUnique({
      where: { id: kitId },
      include: withWork,
    }),
    'This kit',
  );
}

/** The same, refused unless parts may still move. */
export async function openKit(tx: Tx, kitId: string): Promise<Kit> {
  const kit = await theKit(tx, kitId);
  if (kit.state !== 'open') throw new Problem('kit-closed', `${kit.code} is ${kit.state}`, { kit: kit.code });
  return kit;
}

/** One line of the kit, or `not-found`. */
export function lineOf(kit: Kit, lineId: string): Line {
  return found(
    kit.lines.find(({ id }) => id === lineId),
    `This line of ${kit.code}`,
  );
}

/** Counts up the kit's version; answers the reply of most kit commands. */
export async function touchKit(tx: Tx, kit: Kit): Promise<{ id: string; version: number }> {
  const { version } = await tx.kit.update({ where: { id: kit.id }, data: { version: { increment: 1 } } });
  return { id: kit.id, version };
}

/** Whose chains a kit command is written to: the kit, its work order, and the lots it moved. */
export function kitSubjects(kit: Kit, version: number, lotIds: readonly string[] = []): [Subject, ...Subject[]] {
  return [
    { kind: 'kit', id: kit.id, before: kit.version, after: version },
    { kind: 'work-order', id: kit.workOrderId },
    ...[...new Set(lotIds)].map((id) => ({ kind: 'lot', id })),
  ];
}

/** The kit, and the part of a lot: everything a movement between them decides on. */
export async function kitLocks(tx: Tx, kitId: string, lot?: { code?: string; id?: string }): Promise<string[]> {
  const known = lot ? await tx.lot.findFirst({ where: lot, select: { partId: true } }) : null;
  return [`kit:${kitId}`, ...(known ? [`part:${known.partId}`] : [])];
}

const stoppedStages = ['released', 'shipped', 'closed', 'scrapped', 'returning-unrepaired'];

/** Reserving is harmless at any time; pieces go into a tray only while the work may go on. */
export function refuseStopped({ workOrder }: Kit): void {
  if (workOrder.consent === 'declined')
    throw new Problem('work-stopped', `The customer declined ${workOrder.number}`, { workOrder: workOrder.number });
  if (stoppedStages.includes(workOrder.stage))
    throw new Problem('work-stopped', `${workOrder.number} is ${workOrder.stage}`, { workOrder: workOrder.number });
}
