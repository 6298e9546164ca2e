import { Problem } from '@hubwright/contracts/problems';
import { type Closing, close, type KitMovement, type Required } from '@hubwright/rules/kits';
import type { Tx } from '../../platform/database/client.ts';
import { type Ask, askIn } from './ask.ts';
import { closingInWords } from './closing-words.ts';
import { type Held, heldAt } from './held.ts';
import type { KitContext } from './kit.ts';
import { standIns } from './stand-ins.ts';
import { type WaitingLine, waitingLines } from './waiting-lines.ts';

interface Named {
  /** Part number. */
  readonly part: string;
  readonly description: string;
  readonly issueUnit: string;
  readonly quantity: number;
}

/** What the ledger says about a build, in the rule's terms (parts by number) and in sentences. */
export interface Judgement {
  readonly closed: boolean;
  readonly leftOver: readonly (Named & { readonly place: 'tray' | 'rack'; readonly lots: string[] })[];
  readonly missing: readonly (Named & { readonly position: string | null })[];
  /** In the unit beyond the list or from the wrong source, with the positions and lots it may be. */
  readonly unexpected: readonly (Named & { readonly places: string[] })[];
  /** Lines of the list that are in no kit yet. */
  readonly waiting: readonly WaitingLine[];
  readonly sentences: string[];
}

interface PartRow {
  partId: string;
  part: string;
  description: string;
  issueUnit: string;
}
interface LineRow extends PartRow {
  id: string;
  quantity: number;
  minimum: number | null;
  position: string;
  source: NonNullable<Required['source']>;
}
interface MovementRow extends PartRow {
  quantity: number;
  fromKind: string;
  toKind: string;
  position: string | null;
}

const linesSql = `
  SELECT kl.id, p.number AS part, p.description, p.issue_unit AS "issueUnit", kl.quantity, kl.minimum, kl.position, kl.source,
    kl.part_id AS "partId"
  FROM kit_lines kl JOIN kits k ON k.id = kl.kit_id JOIN parts p ON p.id = kl.part_id
  WHERE k.work_order_id = $1::uuid AND k.state <> 'cancelled' ORDER BY k.created_at, kl.sequence`;

// Every movement into or out of the trays, the rack and the unit, whoever made it: nothing is left out of the sum.
const movementsSql = `
  WITH places AS (
    SELECT 'tray' AS kind, id::text AS ref FROM kits WHERE work_order_id = $1::uuid
    UNION ALL SELECT kind, $1::uuid::text FROM (VALUES ('rack'), ('unit')) AS own(kind))
  SELECT m.part_id AS "partId", p.number AS part, p.description, p.issue_unit AS "issueUnit", m.quantity, m.from_kind AS "fromKind", m.to_kind AS "toKind", m.position
  FROM movements m JOIN parts p ON p.id = m.part_id
  WHERE m.id IN (
    SELECT x.id FROM places pl JOIN movements x ON x.from_kind = pl.kind AND x.from_ref = pl.ref
    UNION SELECT x.id FROM places pl JOIN movements x ON x.to_kind = pl.kind AND x.to_ref = pl.ref)
  ORDER BY m.sequence`;

/** The only thing that decides whether a build closes: `kits.close` over the kit lines and all movements of this unit. */
export async function judgeClose(tx: Tx, workOrderId: string): Promise<Judgement> {
  return judge(askIn(tx), workOrderId, await waitingLines(tx, workOrderId));
}

export async function judge(ask: Ask, workOrderId: string, waiting: readonly WaitingLine[]): Promise<Judgement> {
  const lines = await ask<LineRow>(linesSql, [workOrderId]);
  const movements = await ask<MovementRow>(movementsSql, [workOrderId]);
  const acceptable = await acceptableOf(ask, lines, movements);
  const required = lines.map((line) => requiredOf(line, acceptable(line.partId)));
  const verdict = close({ required, movements: movements.map(kitMovement) });
  const parts = new Map([...lines, ...movements].map((row) => [row.part, row]));
  const named = (part: string) => {
    const { description = '', issueUnit = 'piece' } = parts.get(part) ?? {};
    return { description, issueUnit };
  };
  const held = await heldFor(ask, workOrderId, verdict);
  const judgement = {
    closed: verdict.closed && waiting.length === 0,
    leftOver: verdict.leftOver.map((each) => ({
      ...each,
      ...named(each.part),
      lots: lotsOf(held[each.place], each.part),
    })),
    missing: verdict.missing.map((each) => ({ ...each, ...named(each.part), position: each.position ?? null })),
    unexpected: verdict.unexpected.map((each) => ({
      ...each,
      ...named(each.part),
      places: placesOf(held.unit, lines, each.part),
    })),
    waiting,
  };
  return { ...judgement, sentences: closingInWords(judgement) };
}

/** Numbers of what may stand in, whenever: what is in the unit was taken when it was allowed. */
async function acceptableOf(ask: Ask, lines: readonly LineRow[], movements: readonly MovementRow[]) {
  const known = await standIns(
    ask,
    lines.map(({ partId }) => partId),
  );
  const numbers = new Map([...lines, ...movements].map(({ partId, part }) => [partId, part]));
  return (partId: string) => known.parts(partId).flatMap((id) => (id === partId ? [] : (numbers.get(id) ?? [])));
}

function requiredOf({ part, quantity, minimum, position, source }: LineRow, acceptable: string[]): Required {
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
  // What is held for its owner has left the job like what went back to them.
  const place = (kind: string) =>
    (kind === 'held' ? 'customer' : kitPlaces.has(kind) ? kind : 'stock') as KitMovement['from'];
  return { part, quantity, from: place(fromKind), to: place(toKind), ...(position ? { position } : {}) };
}

/** Where to pick up what stands in the way; nothing is read where nothing does. */
async function heldFor(
  ask: Ask,
  workOrderId: string,
  { leftOver, unexpected }: Closing,
): Promise<Record<'tray' | 'rack' | 'unit', Held[]>> {
  const held = { tray: [] as Held[], rack: [] as Held[], unit: [] as Held[] };
  if (leftOver.length > 0) {
    const kits = await ask<{ id: string }>('SELECT id FROM kits WHERE work_order_id = $1::uuid', [workOrderId]);
    // One after the other: in a transaction there is one connection. A work order has one or two kits.
    for (const { id } of kits) held.tray.push(...(await heldAt(ask, { kind: 'tray', ref: id })));
    held.rack = await heldAt(ask, { kind: 'rack', ref: workOrderId });
  }
  if (unexpected.length > 0) held.unit = await heldAt(ask, { kind: 'unit', ref: workOrderId });
  return held;
}

function lotsOf(held: readonly Held[], number: string): string[] {
  return [...new Set(held.filter(({ part }) => part.number === number).map(({ lotCode }) => lotCode))];
}

/** Positions that hold more of a part than their line asks for, or from the other source; all that hold it where none stands out. */
function placesOf(unit: readonly Held[], lines: readonly LineRow[], number: string): string[] {
  const here = unit.filter(({ part }) => part.number === number);
  const odd = here.filter(({ lineId, quantity, origin }) => {
    const line = lines.find(({ id }) => id === lineId);
    return !line || quantity > line.quantity || line.source === (origin === 'taken-off' ? 'new' : 'reused');
  });
  return (odd.length > 0 ? odd : here).map(({ position, lotCode }) => `${position || 'no position'} (${lotCode})`);
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
      waiting: judgement.waiting,
    });
  await tx.reservation.deleteMany({ where: { kitLine: { kit: { workOrderId, state: 'open' } } } });
  return turnKits(tx, { workOrderId, from: 'open', data: { state: 'closed', closedAt: now } });
}

/** A failed test opens the build again: the same kits take parts once more. */
export async function reopenKits({ tx }: Pick<KitContext, 'tx'>, workOrderId: string) {
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
