import { type ForeseeInput, type PartRate, type PartRecord, partRates, type UnitDue } from '@hubwright/rules/foreseen';
import { findingRate } from '@hubwright/rules/history';
import type { ListLine } from '@hubwright/rules/kit-list';
import type { Ask } from './ask.ts';
import { type Answer, likelyPercent, type OddsBasis } from './odds.ts';

/** How far ahead units that come due are looked for: longer than any usual lead time. Practice, no source. */
const months = 6;
/** Overdue for longer, a unit went elsewhere or does not fly. Practice, no source. */
const overdueDays = 180;
/** From arrival to the build, as a new kit is planned; practice, no source. */
const buildDays = 14;
/** Before a shop has records of its own: how many units that come due come back to it, and how many such cases that is worth. Practice, no source. */
const usualReturn = { mean: 0.6, weight: 10 } as const;
const yearsBack = 5;

/** What a model is sent in for when it is due. */
const mainScope = `CASE WHEN m.kind = 'governor' THEN 'governor' WHEN m.pitch = 'fixed' THEN 'fixed-pitch' ELSE 'overhaul' END`;
const takes = `coalesce((SELECT string_agg(s::text, '+' ORDER BY s::text) FROM unnest(c.accepted_sources) s), 'maker-new')`;

/**
 * Units out there that come due, from the kept due dates; $1 today. A directive alone asks for work of its own, not for the
 * list of an overhaul.
 */
const dueSql = `
  SELECT d.unit_id AS unit, d.model_id AS model, i.serial, ${takes} AS sources, coalesce(d.earliest, d.due_on)::text AS earliest,
    d.due_on::text AS likely, coalesce(d.latest, d.due_on)::text AS latest
  FROM unit_due d JOIN serialized_items i ON i.id = d.unit_id LEFT JOIN customers c ON c.id = d.customer_id
  WHERE NOT d.in_shop AND d.model_id IS NOT NULL AND d.governed_by IN ('hours', 'calendar', 'life')
    AND d.due_on >= $1::date - ${overdueDays} AND coalesce(d.earliest, d.due_on) < $1::date + ${months * 31} ORDER BY d.unit_id`;

/**
 * Units whose list asks for the part $1 only by their serial, and whose serial nobody has read: what they need of it stands in no kit and
 * in no expectation. $2 today. Those in the house by their own order, the others where they come due.
 */
export const unreadSql = `
  WITH due AS (${dueSql.replaceAll('$1', '$2').replace(' ORDER BY d.unit_id', '')}),
  waiting AS (
    SELECT w.unit_id AS unit, w.id AS work_order, w.number, w.model_id AS model, w.revision_id AS revision, w.scope
    FROM work_orders w WHERE w.closed_at IS NULL AND w.shipped_at IS NULL AND w.consent <> 'declined'
    UNION ALL SELECT d.unit, NULL, NULL, d.model, r.id, ${mainScope}
    FROM due d JOIN unit_models m ON m.id = d.model JOIN manual_revisions r ON r.manual_id = m.manual_id AND r.state = 'current')
  SELECT i.id, m.designation || ' ' || coalesce(i.provisional_name, 'without a name') AS unit, w.work_order AS "workOrderId", w.number AS "workOrder"
  FROM waiting w JOIN serialized_items i ON i.id = w.unit JOIN unit_models m ON m.id = w.model
  WHERE i.serial IS NULL AND EXISTS (SELECT FROM kit_list_lines l WHERE l.revision_id = w.revision AND l.model_id = w.model AND l.part_id = $1::uuid
    AND w.scope = ANY(l.scopes) AND (l.serial_from IS NOT NULL OR l.serial_to IS NOT NULL))
  ORDER BY w.number NULLS LAST, unit LIMIT 200`;

/** Units in the house that nobody has looked into: what will be found is not in their kits. */
const unseenSql = `
  SELECT w.id AS "workOrder", w.model_id AS model, ${takes} AS sources, w.consent, w.consent_since::date::text AS "consentSince",
    coalesce((SELECT min(k.need_by)::text FROM kits k WHERE k.work_order_id = w.id AND k.state = 'open'), (w.received_on + ${buildDays})::text) AS "needBy",
    coalesce((SELECT json_agg(DISTINCT kl.part_id) FROM kit_lines kl JOIN kits k ON k.id = kl.kit_id
      WHERE k.work_order_id = w.id AND kl.finding_id IS NOT NULL), '[]') AS asked
  FROM work_orders w JOIN unit_models m ON m.id = w.model_id JOIN customers c ON c.id = w.customer_id
  WHERE w.stage IN ('received', 'teardown') AND w.consent <> 'declined' AND w.closed_at IS NULL AND w.scope = ${mainScope} ORDER BY w.id`;

/** What the current revision lists for each model when it is due. */
const modelsSql = `
  SELECT m.id AS model, ${mainScope} AS scope, coalesce(m.blade_count, 0) AS "bladeCount",
    json_agg(json_build_object('id', l.id, 'partId', l.part_id, 'position', l.position, 'scopes', l.scopes, 'per', l.per, 'quantity', l.quantity,
      'minimum', l.minimum, 'source', l.source, 'serialFrom', l.serial_from, 'serialTo', l.serial_to) ORDER BY l.sequence) AS list
  FROM unit_models m JOIN manual_revisions r ON r.manual_id = m.manual_id AND r.state = 'current'
  JOIN kit_list_lines l ON l.revision_id = r.id AND l.model_id = m.id WHERE ${mainScope} = ANY(l.scopes) GROUP BY m.id ORDER BY m.id`;

/**
 * Of units finished before today ($1, in the zone $2): how many there were of each model, and in how many new pieces of a part went in beyond what
 * the list always asks for, by the ledger. Parts that the list takes from the unit and that were never replaced are among them. What is
 * finished changes no more, so that rates hold for a day.
 */
const recordsSql = `
  WITH seen AS MATERIALIZED (
    SELECT w.id, w.model_id FROM work_orders w JOIN unit_models m ON m.id = w.model_id
    WHERE w.released_at < ($1::date)::timestamp AT TIME ZONE $2 AND w.released_at >= ($1::date - make_interval(years => ${yearsBack})) AND w.scope = ${mainScope}),
  put_in AS (
    SELECT s.model_id, s.id, kl.part_id, sum(CASE mv.to_kind WHEN 'unit' THEN mv.quantity ELSE -mv.quantity END) AS pieces
    FROM seen s JOIN kits k ON k.work_order_id = s.id JOIN kit_lines kl ON kl.kit_id = k.id LEFT JOIN kit_list_lines ll ON ll.id = kl.list_line_id
    JOIN movements mv ON mv.kit_line_id = kl.id AND ((mv.from_kind = 'tray' AND mv.to_kind = 'unit') OR (mv.from_kind = 'unit' AND mv.to_kind = 'tray'))
    WHERE kl.finding_id IS NOT NULL OR ll.source <> 'new' GROUP BY 1, 2, 3),
  happened AS (SELECT model_id, part_id, count(*)::int AS events, sum(pieces)::int AS pieces FROM put_in WHERE pieces > 0 GROUP BY 1, 2),
  may AS (
    SELECT DISTINCT l.model_id, l.part_id FROM kit_list_lines l JOIN manual_revisions r ON r.id = l.revision_id AND r.state = 'current'
      JOIN unit_models m ON m.id = l.model_id WHERE l.source <> 'new' AND ${mainScope} = ANY(l.scopes)
    UNION SELECT model_id, part_id FROM happened)
  SELECT y.model_id AS model, y.part_id AS part, p.class AS "partClass", coalesce((SELECT count(*) FROM seen s WHERE s.model_id = y.model_id), 0)::int AS units,
    coalesce(h.events, 0) AS events, coalesce(h.pieces, 0) AS pieces
  FROM may y JOIN parts p ON p.id = y.part_id LEFT JOIN happened h ON h.model_id = y.model_id AND h.part_id = y.part_id ORDER BY 1, 2`;

/**
 * Of units that came due, how many came back: a later visit for its main work, at least half a year after such a one was released here,
 * against those overdue for longer than is waited for. Up to yesterday; $1 today.
 */
const returnsSql = `
  SELECT (SELECT count(*) FROM work_orders w JOIN unit_models m ON m.id = w.model_id
      WHERE w.scope = ${mainScope} AND w.received_on < $1::date AND w.received_on >= ($1::date - make_interval(years => ${yearsBack}))
        AND EXISTS (SELECT FROM work_orders b WHERE b.unit_id = w.unit_id AND b.scope = w.scope AND b.released_at < w.received_on - 180))::int AS came,
    (SELECT count(*) FROM unit_due d WHERE NOT d.in_shop AND d.governed_by IN ('hours', 'calendar', 'life')
      AND d.due_on < $1::date - ${overdueDays} AND d.due_on >= ($1::date - make_interval(years => ${yearsBack})))::int AS stayed`;

/** Changes whenever the kept due dates do. */
export const dueStampSql = `SELECT count(*) || ' ' || coalesce(max(computed_at)::text, '') AS stamp FROM unit_due`;

/** How likely a unit that comes due comes to us, and what that is told from. */
export interface ReturnRate {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly came: number;
  readonly asked: number;
}

export async function partRatesOf(ask: Ask, { today, zone }: { today: string; zone: string }): Promise<PartRate[]> {
  return partRates(await ask<PartRecord>(recordsSql, [today, zone]));
}

export async function returnRateOf(ask: Ask, today: string): Promise<ReturnRate> {
  const [row] = await ask<{ came: number; stayed: number }>(returnsSql, [today]);
  const { came, stayed } = row ?? { came: 0, stayed: 0 };
  return { ...findingRate(came, came + stayed, usualReturn), came, asked: came + stayed };
}

type UnseenRow = Omit<ForeseeInput['unseen'][number], 'odds'> & Answer;
type ListRow = { [K in keyof ListLine]: ListLine[K] | null };
type ModelRow = Omit<ForeseeInput['models'][number], 'list'> & { readonly list: readonly ListRow[] };

/** The question of what is foreseen, from what is on record now. */
export async function foreseeInput(
  ask: Ask,
  of: { basis: OddsBasis; parts: readonly PartRate[]; returnRate: ReturnRate },
): Promise<ForeseeInput> {
  const { basis } = of;
  const due = await ask<UnitDue>(dueSql, [basis.today]);
  const unseen = await ask<UnseenRow>(unseenSql, []);
  const models = await ask<ModelRow>(modelsSql, []);
  return {
    ...{ today: basis.today, months, overdueDays, buildDays, returnRate: of.returnRate.mean, due },
    unseen: unseen.map(({ consent, consentSince, extra: _, ...unit }) => ({
      ...unit,
      odds: (likelyPercent({ consent, consentSince, extra: null }, basis) ?? 100) / 100,
    })),
    models: models.map((model) => ({ ...model, list: model.list.map(withoutNulls) })),
    rates: of.parts.map(({ model, part, rate, each }) => ({ model, part, rate, each })),
  };
}

function withoutNulls(row: ListRow): ListLine {
  return Object.fromEntries(Object.entries(row).filter(([, value]) => value !== null)) as ListLine;
}
