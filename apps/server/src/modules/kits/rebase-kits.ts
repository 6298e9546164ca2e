import type { Scope } from '@hubwright/contracts/manuals/words';
import type { Subject } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { kitListFor } from '../manuals/public.ts';
import { askIn } from './ask.ts';
import { openKitOf } from './finding-demand.ts';
import { type Held, heldAt } from './held.ts';
import type { KitContext } from './kit.ts';
import { figuresOf } from './line-figures.ts';
import { nextSequence } from './new-instead.ts';
import { type LineNow, type LineThen, planRebase, type RebasePlan } from './rebase-plan.ts';
import { lotsOf } from './surplus.ts';

export interface KitRebase extends RebasePlan {
  readonly workOrderId: string;
  readonly revisionId: string;
  readonly kits: readonly { readonly id: string; readonly state: string; readonly version: number }[];
}

/** What another revision of the manual, or another scope, changes in the kits of a work order. Reads only; a dry run and a view ask the same. */
export async function planKitRebase(
  tx: Tx,
  workOrderId: string,
  to: { revisionId: string; scope: string },
): Promise<KitRebase> {
  const { revisionId } = to;
  const kits = await tx.kit.findMany({
    where: { workOrderId, state: { not: 'cancelled' } },
    orderBy: { createdAt: 'asc' },
    select: { id: true, code: true, state: true, version: true },
  });
  const list = await listedBy(tx, workOrderId, to);
  const { lines, tornDown } = await linesNow(tx, workOrderId, kits);
  const parts = await tx.part.findMany({
    where: { id: { in: list.map(({ partId }) => partId) } },
    select: { id: true, number: true, description: true, issueUnit: true },
  });
  const known = {
    parts: new Map(parts.map((part) => [part.id, part])),
    tornDown,
    kitCode: kits.at(-1)?.code ?? 'a new kit',
  };
  return { workOrderId, revisionId, kits, ...planRebase(lines, list, known) };
}

async function listedBy(tx: Tx, workOrderId: string, to: { revisionId: string; scope: string }) {
  const workOrder = await tx.workOrder.findUniqueOrThrow({
    where: { id: workOrderId },
    include: { unit: { select: { serial: true } }, model: { select: { bladeCount: true } } },
  });
  const { lines } = await kitListFor(tx, {
    revisionId: to.revisionId,
    modelId: workOrder.modelId,
    scope: to.scope as Scope,
    serial: workOrder.unit.serial,
    bladeCount: workOrder.model.bladeCount ?? 0,
  });
  return lines;
}

/** Lines that came from a kit list, with where their pieces are. */
async function linesNow(tx: Tx, workOrderId: string, kits: readonly { id: string; code: string }[]) {
  const kitIds = kits.map(({ id }) => id);
  const rows = await tx.kitLine.findMany({
    where: { kitId: { in: kitIds } },
    orderBy: [{ kitId: 'asc' }, { sequence: 'asc' }],
    include: { part: { select: { id: true, number: true, description: true, issueUnit: true } } },
  });
  const ask = askIn(tx);
  const figures = await figuresOf(ask, kitIds);
  const tray: Held[] = [];
  for (const id of kitIds) tray.push(...(await heldAt(ask, { kind: 'tray', ref: id })));
  const rack = await heldAt(ask, { kind: 'rack', ref: workOrderId });
  const unit = await heldAt(ask, { kind: 'unit', ref: workOrderId });
  const listIds = rows.flatMap(({ listLineId }) => listLineId ?? []);
  const listed = await tx.kitListLine.findMany({ where: { id: { in: listIds } }, select: { id: true, source: true } });
  const sources = new Map(listed.map(({ id, source }) => [id, source]));
  const lines = rows.flatMap((row): LineNow[] => {
    if (row.listLineId === null) return [];
    const { listLineId } = row;
    return [
      {
        ...row,
        ...{ listLineId, listedSource: sources.get(listLineId) ?? row.source, figures: figures(row.id) },
        kitCode: kits.find(({ id }) => id === row.kitId)?.code ?? '',
        lots: lotsOf(row.id, { tray, rack, unit }),
      },
    ];
  });
  return { lines, tornDown: rows.some(({ id }) => figures(id).cameOn > 0) };
}

/** Locks of everything a rebase of these kits decides on: the kits, and the parts whose promises it may free. */
export async function rebaseLocks(tx: Tx, workOrderId: string): Promise<string[]> {
  const promises = await tx.reservation.findMany({
    where: { kitLine: { kit: { workOrderId } } },
    select: { lot: { select: { partId: true } } },
  });
  return [...new Set(promises.map(({ lot }) => `part:${lot.partId}`))];
}

/** Does what the plan says. Call under `rebaseLocks` and `kitsOf` locks. Answers the kits it changed, as subjects for the record. */
export async function applyKitRebase(context: KitContext, plan: KitRebase): Promise<Subject[]> {
  const { tx } = context;
  for (const then of plan.set) await setLine(context, then);
  await addLines(context, plan);
  const kits = await tx.kit.findMany({ where: { workOrderId: plan.workOrderId, state: { not: 'cancelled' } } });
  const subjects: Subject[] = [];
  for (const { id, version } of kits) {
    await tx.kit.update({ where: { id }, data: { revisionId: plan.revisionId, version: version + 1 } });
    const before = plan.kits.find((kit) => kit.id === id)?.version;
    subjects.push({ kind: 'kit', id, ...(before === undefined ? {} : { before }), after: version + 1 });
  }
  return subjects;
}

async function setLine({ tx, now }: KitContext, then: LineThen): Promise<void> {
  const { line, quantity, minimum, source, listLineId, freed } = then;
  const asked = quantity > line.quantity ? { askedLaterAt: now } : {};
  await tx.kitLine.update({ where: { id: line.id }, data: { quantity, minimum, source, listLineId, ...asked } });
  if (freed > 0) await freePieces(tx, line.id, freed);
}

/** The newest promise goes first. */
async function freePieces(tx: Tx, kitLineId: string, freed: number): Promise<void> {
  const promises = await tx.reservation.findMany({ where: { kitLineId }, orderBy: { createdAt: 'desc' } });
  let left = freed;
  for (const { id, quantity } of promises) {
    const less = Math.min(left, quantity);
    left -= less;
    if (less === quantity) await tx.reservation.delete({ where: { id } });
    else if (less > 0) await tx.reservation.update({ where: { id }, data: { quantity: quantity - less } });
  }
}

async function addLines(context: KitContext, { workOrderId, add }: KitRebase): Promise<void> {
  if (add.length === 0) return;
  const { tx, newId, now } = context;
  const kitId = await openKitOf(context, workOrderId);
  const sequence = await nextSequence(tx, kitId);
  await tx.kitLine.createMany({
    data: add.map((line, index) => ({
      ...line,
      ...{ id: newId(), kitId, minimum: line.minimum ?? null, sequence: sequence + index, askedLaterAt: now },
    })),
  });
}
