import { Problem } from '@hubwright/contracts/problems';
import { type Closing, close, type KitMovement, type Required } from '@hubwright/rules/kits';
import type { Tx } from '../../platform/database/client.ts';
import { type Ask, askIn } from './ask.ts';
import { type Held, heldAt } from './held.ts';
import type { KitContext } from './kit.ts';

/** What the ledger says about a build, in the rule's terms (parts by number) and in sentences. */
export interface Judgement {
  readonly closed: boolean;
  readonly leftOver: readonly (Closing['leftOver'][number] & { readonly lots: string[] })[];
  readonly missing: readonly { readonly part: string; readonly quantity: number; readonly position: string | null }[];
  readonly unexpected: Closing['unexpected'];
  readonly sentences: string[];
}

interface LineRow {
  part: string;
  quantity: number;
  minimum: number | null;
  position: string;
  source: NonNullable<Required['source']>;
  acceptable: string[];
}
interface MovementRow {
  part: string;
  quantity: number;
  fromKind: string;
  toKind: string;
  position: string | null;
}

const linesSql = `
  SELECT p.number AS part, kl.quantity, kl.minimum, kl.position, kl.source,
    coalesce((SELECT array_agg(u.number) FROM part_alternates a JOIN parts u ON u.id = a.use_id WHERE a.part_id = kl.part_id), '{}') AS acceptable
  FROM kit_lines kl JOIN kits k ON k.id = kl.kit_id JOIN parts p ON p.id = kl.part_id
  WHERE k.work_order_id = $1::uuid AND k.state <> 'cancelled' ORDER BY k.created_at, kl.sequence`;

// Every movement into or out of the trays, the rack and the unit, whoever made it: nothing is left out of the sum.
const movementsSql = `
  WITH places AS (
    SELECT 'tray' AS kind, id::text AS ref FROM kits WHERE work_order_id = $1::uuid
    UNION ALL SELECT kind, $1::uuid::text FROM (VALUES ('rack'), ('unit')) AS own(kind))
  SELECT p.number AS part, m.quantity, m.from_kind AS "fromKind", m.to_kind AS "toKind", m.position
  FROM movements m JOIN parts p ON p.id = m.part_id
  WHERE m.id IN (
    SELECT x.id FROM places pl JOIN movements x ON x.from_kind = pl.kind AND x.from_ref = pl.ref
    UNION SELECT x.id FROM places pl JOIN movements x ON x.to_kind = pl.kind AND x.to_ref = pl.ref)
  ORDER BY m.sequence`;

/** The only thing that decides whether a build closes: `kits.close` over the kit lines and all movements of this unit. */
export async function judgeClose(tx: Tx, workOrderId: string): Promise<Judgement> {
  return judge(askIn(tx), workOrderId);
}

export async function judge(ask: Ask, workOrderId: string): Promise<Judgement> {
  const lines = await ask<LineRow>(linesSql, [workOrderId]);
  const movements = await ask<MovementRow>(movementsSql, [workOrderId]);
  const verdict = close({ required: lines.map(requiredOf), movements: movements.map(kitMovement) });
  const leftOver = await named(ask, workOrderId, verdict);
  const missing = verdict.missing.map((each) => ({ ...each, position: each.position ?? null }));
  const judgement = { closed: verdict.closed, leftOver, missing, unexpected: verdict.unexpected };
  return { ...judgement, sentences: sentencesOf(judgement) };
}

function requiredOf({ part, quantity, minimum, position, source, acceptable }: LineRow): Required {
  return {
    part,
    quantity,
    ...(minimum === null ? {} : { minimum }),
    ...(position === '' ? {} : { position }),
    acceptable,
    source,
  };
}

const kitPlaces: ReadonlySet<string> = new Set(['tray', 'rack', 'unit', 'scrap', 'customer']);

function kitMovement({ part, quantity, fromKind, toKind, position }: MovementRow): KitMovement {
  const place = (kind: string) => (kitPlaces.has(kind) ? kind : 'stock') as KitMovement['from'];
  return { part, quantity, from: place(fromKind), to: place(toKind), ...(position ? { position } : {}) };
}

/** Leftovers with the codes of their lots, so that someone can go and pick them up. */
async function named(ask: Ask, workOrderId: string, { leftOver }: Closing): Promise<Judgement['leftOver']> {
  if (leftOver.length === 0) return [];
  const kits = await ask<{ id: string }>('SELECT id FROM kits WHERE work_order_id = $1::uuid', [workOrderId]);
  // One after the other: in a transaction there is one connection. A work order has one or two kits.
  const tray: Held[] = [];
  for (const { id } of kits) tray.push(...(await heldAt(ask, { kind: 'tray', ref: id })));
  const held = { tray, rack: await heldAt(ask, { kind: 'rack', ref: workOrderId }) };
  return leftOver.map((each) => ({
    ...each,
    lots: [...new Set(held[each.place].filter(({ part }) => part.number === each.part).map(({ lotCode }) => lotCode))],
  }));
}

function sentencesOf({ leftOver, missing, unexpected }: Omit<Judgement, 'sentences'>): string[] {
  return [
    ...leftOver.map(({ part, quantity, place, lots }) => {
      const what = `${quantity} × ${part} left in the ${place} (${lots.join(', ')})`;
      return place === 'tray'
        ? `${what}: install it, or bring it back to its bin.`
        : `${what}: put it back, replace it, scrap it or return it to its owner.`;
    }),
    ...missing.map(
      ({ part, quantity, position }) => `${quantity} × ${part} missing${position ? ` at ${position}` : ''}.`,
    ),
    ...unexpected.map(
      ({ part, quantity }) =>
        `${quantity} × ${part} in the unit beyond the list, or from a source its position does not take.`,
    ),
  ];
}

/**
 * Closes every open kit of a work order when the ledger allows it; else throws `build-not-closed` naming every piece. What was
 * still promised to these kits becomes free. Call under `kitsOf` locks. Answers the kits closed, as subjects for the record.
 *
 * A closed kit says that the pieces are accounted for, not that the unit is airworthy.
 */
export async function closeKits({ tx, now }: KitContext, workOrderId: string) {
  const judgement = await judgeClose(tx, workOrderId);
  if (!judgement.closed)
    throw new Problem('build-not-closed', judgement.sentences.join(' '), {
      leftOver: judgement.leftOver,
      missing: judgement.missing,
      unexpected: judgement.unexpected,
    });
  await tx.reservation.deleteMany({ where: { kitLine: { kit: { workOrderId, state: 'open' } } } });
  return turnKits(tx, { workOrderId, from: 'open', data: { state: 'closed', closedAt: now } });
}

/** A failed test opens the build again: the same kits take parts once more. */
export async function reopenKits({ tx }: KitContext, workOrderId: string) {
  return turnKits(tx, { workOrderId, from: 'closed', data: { state: 'open', closedAt: null } });
}

async function turnKits(
  tx: Tx,
  turn: { workOrderId: string; from: string; data: { state: string; closedAt: Date | null } },
) {
  const kits = await tx.kit.findMany({ where: { workOrderId: turn.workOrderId, state: turn.from } });
  for (const kit of kits)
    await tx.kit.update({ where: { id: kit.id }, data: { ...turn.data, version: kit.version + 1 } });
  return kits.map(({ id, version }) => ({ kind: 'kit', id, before: version, after: version + 1 }));
}

/** The locks of everything a close, or a change of the kits of a work order, decides on. */
export async function kitsOf(tx: Tx, workOrderId: string): Promise<string[]> {
  const kits = await tx.kit.findMany({ where: { workOrderId }, select: { id: true } });
  return kits.map(({ id }) => `kit:${id}`);
}

/** What of the kits still stands in the way of release, each in a sentence; empty when nothing does. */
export async function openItems(tx: Tx, workOrderId: string): Promise<string[]> {
  const open = await tx.kit.findMany({ where: { workOrderId, state: 'open' }, select: { code: true } });
  const { sentences, closed } = await judgeClose(tx, workOrderId);
  if (!closed) return sentences;
  return open.map(({ code }) => `${code} is whole but not closed.`);
}
