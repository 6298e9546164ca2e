import type { Ask } from './ask.ts';

/** Where the pieces of one kit line are, added up from its movements. */
export interface Figures {
  readonly inTray: number;
  readonly installed: number;
  readonly inRack: number;
  /** Pieces of the rack that are out at a vendor, and expected back. */
  readonly atVendor: number;
  /** Pieces the unit came with, taken off at teardown. */
  readonly cameOn: number;
  readonly reserved: number;
}

const none: Figures = { inTray: 0, installed: 0, inRack: 0, atVendor: 0, cameOn: 0, reserved: 0 };

const figuresSql = `
  SELECT kl.id AS "lineId", m."inTray", m.installed, m."inRack", m."atVendor", m."cameOn",
    (SELECT coalesce(sum(r.quantity), 0)::int FROM reservations r WHERE r.kit_line_id = kl.id) AS reserved
  FROM kit_lines kl
  CROSS JOIN LATERAL (
    SELECT coalesce(sum(CASE 'tray' WHEN to_kind THEN quantity WHEN from_kind THEN -quantity END), 0)::int AS "inTray",
      coalesce(sum(CASE 'unit' WHEN to_kind THEN quantity WHEN from_kind THEN -quantity END), 0)::int AS installed,
      coalesce(sum(CASE 'rack' WHEN to_kind THEN quantity WHEN from_kind THEN -quantity END), 0)::int AS "inRack",
      coalesce(sum(CASE 'vendor' WHEN to_kind THEN quantity WHEN from_kind THEN -quantity END), 0)::int AS "atVendor",
      coalesce(sum(quantity) FILTER (WHERE from_kind = 'customer' AND to_kind = 'unit'), 0)::int AS "cameOn"
    FROM movements WHERE kit_line_id = kl.id) m
  WHERE kl.kit_id = ANY($1::uuid[])`;

/** The figures of every line of these kits, by line id. */
export async function figuresOf(ask: Ask, kitIds: readonly string[]): Promise<(lineId: string) => Figures> {
  const rows = await ask<Figures & { lineId: string }>(figuresSql, [[...kitIds]]);
  const byLine = new Map(rows.map(({ lineId, ...figures }) => [lineId, figures]));
  return (lineId) => byLine.get(lineId) ?? none;
}

/** A line as far as its demand on stock goes. */
export interface DemandingLine {
  readonly quantity: number;
  readonly source: string;
}

/**
 * Pieces that stock must still give this line. A reused position asks stock for nothing; one that takes either counts on the
 * unit's own piece until teardown shows that it is not there, also while a vendor has it. As-needed lines are planned at the most that may be used.
 */
export function toPull(line: DemandingLine, figures: Figures, tornDown: boolean): number {
  const there = figures.inTray + figures.installed;
  if (line.source === 'new') return Math.max(0, line.quantity - there);
  if (line.source === 'any' && tornDown) return Math.max(0, line.quantity - there - figures.inRack - figures.atVendor);
  return 0;
}

/** Pieces of the line that may still go in, from wherever its source allows. */
export function roomIn(line: DemandingLine, figures: Figures): number {
  return Math.max(0, line.quantity - figures.installed);
}
