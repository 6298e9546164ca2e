import type { Scope } from '@hubwright/contracts/manuals/words';
import { Problem } from '@hubwright/contracts/problems';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { kitListFor } from '../manuals/public.ts';
import type { KitContext } from './kit.ts';

export interface MadeKit {
  readonly id: string;
  readonly code: string;
  readonly version: number;
  readonly lines: number;
  /** List lines that wait for the unit's serial to be read; the kit is not complete before. */
  readonly undecided: number;
}

/**
 * The kit of a work order, exploded from the kit list of its manual revision for this very unit. Where an open kit is there
 * already, it gets the lines that apply since its serial was read; `kit-exists` when there is nothing to add.
 * Undefined when the revision lists nothing for this scope.
 */
export async function makeKit(
  context: KitContext,
  asked: { workOrderId: string; needBy: string },
): Promise<MadeKit | undefined> {
  const { tx } = context;
  const { workOrder, list } = await listOf(tx, asked.workOrderId);
  const kits = await tx.kit.findMany({
    where: { workOrderId: workOrder.id, state: { not: 'cancelled' } },
    include: { lines: true },
  });
  const open = kits.find(({ state }) => state === 'open');
  const key = (line: { listLineId: string | null; position: string }) => `${line.listLineId} ${line.position}`;
  const known = new Set(kits.flatMap(({ lines }) => lines.map(key)));
  const added = list.lines.filter((line) => !known.has(key(line)));
  if (added.length === 0) {
    const [there] = kits;
    if (!there) return undefined;
    throw new Problem('kit-exists', `${workOrder.number} has ${there.code} with every listed line`, {
      kit: there.code,
    });
  }
  const kit = open ?? (await startKit(context, { ...asked, revisionId: workOrder.revisionId }));
  const last = Math.max(0, ...(open?.lines.map(({ sequence }) => sequence) ?? []));
  await tx.kitLine.createMany({
    data: added.map((line, index) => ({
      ...line,
      minimum: line.minimum ?? null,
      id: context.newId(),
      kitId: kit.id,
      sequence: last + index + 1,
      askedLaterAt: open ? context.now : null,
    })),
  });
  const version = open ? open.version + 1 : kit.version;
  if (open) await tx.kit.update({ where: { id: open.id }, data: { version } });
  return { id: kit.id, code: kit.code, version, lines: added.length, undecided: list.undecided.length };
}

/** The kit list of this work order's unit as the revision has it now. */
export async function listOf(tx: Tx, workOrderId: string) {
  const workOrder = found(
    await tx.workOrder.findUnique({
      where: { id: workOrderId },
      include: { unit: { select: { serial: true } }, model: { select: { bladeCount: true } } },
    }),
    'This work order',
  );
  const list = await kitListFor(tx, {
    revisionId: workOrder.revisionId,
    modelId: workOrder.modelId,
    scope: workOrder.scope as Scope,
    serial: workOrder.unit.serial,
    bladeCount: workOrder.model.bladeCount ?? 0,
  });
  return { workOrder, list };
}

/** An empty open kit; findings may ask for parts where the list asks for none. */
export async function startKit(
  { tx, newId, now }: KitContext,
  given: { workOrderId: string; revisionId: string; needBy: string },
) {
  return tx.kit.create({
    data: {
      id: newId(),
      workOrderId: given.workOrderId,
      code: await nextNumber(tx, 'KIT', 4),
      revisionId: given.revisionId,
      state: 'open',
      needBy: toDbDate(given.needBy),
      createdAt: now,
    },
  });
}
