import { cureExpiry } from '@hubwright/rules/dates';
import type { Reads } from '../../../platform/database/reads.ts';
import { standingsOfUnits } from '../../directives/public.ts';
import { TimesOnRecord } from '../../units/public.ts';
import { directiveSources } from './directive-sources.ts';
import { keepingSources } from './keeping-sources.ts';
import { lifeSources } from './life-sources.ts';
import type { FittedSeal, Kept, LimitedPart, TotalOf, UnitSources } from './source.ts';

/** Runs a constant statement with `$1` parameters. */
type Ask = <Row extends object>(text: string, parameters?: readonly unknown[]) => Promise<Row[]>;

const paper = `manual.number || ' rev. ' || r.revision`;
const currentRevision = `
  JOIN unit_models m ON m.id = u.model_id
  JOIN manual_revisions r ON r.manual_id = m.manual_id AND r.state = 'current'
  JOIN manuals manual ON manual.id = r.manual_id`;

/** $1 units: of those, their parts and the parts of those, the ones the current revision limits in life. */
const limitedSql = `
  WITH RECURSIVE inside AS (
    SELECT id AS unit_id, id AS item_id, NULL::text AS position FROM serialized_items WHERE id = ANY($1::uuid[])
    UNION SELECT inside.unit_id, n.item_id, n.position || coalesce(' of ' || inside.position, '')
      FROM inside JOIN installations n ON n.parent_id = inside.item_id AND n.to_date IS NULL)
  SELECT u.id::text AS unit_id, s.id::text AS item_id, coalesce(i.position, 'the unit') AS position, s.part_number, s.serial,
    ${paper} AS paper, l.hours_tenths, l.cycles, l.overhauls, t.since_new_overhauls,
    (SELECT count(*)::int FROM time_records o WHERE o.item_id = s.id AND o.basis = 'overhaul') AS overhauled
  FROM serialized_items u ${currentRevision}
  JOIN inside i ON i.unit_id = u.id
  JOIN serialized_items s ON s.id = i.item_id
  JOIN life_limits l ON l.revision_id = r.id AND l.model_id = m.id AND l.part_number = upper(s.part_number)
  LEFT JOIN LATERAL (SELECT since_new_overhauls FROM time_records x WHERE x.item_id = s.id
    ORDER BY x.recorded_on DESC, x.recorded_at DESC LIMIT 1) t ON true
  WHERE u.id = ANY($1::uuid[])
  ORDER BY u.id, i.position`;

/** $1 units: what the current revision says of storage and seals, and how each lay in storage. */
const keptSql = `
  SELECT u.id::text AS unit_id, ${paper} AS paper,
    coalesce((SELECT jsonb_agg(jsonb_build_object('preservation', x->>'preservation', 'counts', x->'counts', 'longestMonths', x->'longestMonths'))
      FROM jsonb_array_elements(c.content->'storage') x), '[]') AS storage_rules,
    coalesce((SELECT jsonb_agg(jsonb_build_object('partNumber', x->>'partNumber', 'installedMonths', x->'installedMonths',
        'curedMonths', x->'curedMonths', 'endOfMonth', x->'endOfMonth', 'requirement', x->>'requirement'))
      FROM jsonb_array_elements(c.content->'seals') x), '[]') AS seals,
    coalesce((SELECT jsonb_agg(jsonb_build_object('preservation', p.preservation, 'from', p.from_date::text, 'to', p.to_date::text,
        'inspectedOn', p.inspected_on::text) ORDER BY p.from_date)
      FROM storage_periods p WHERE p.item_id = u.id AND NOT p.withdrawn
        AND NOT EXISTS (SELECT FROM storage_periods n WHERE n.supersedes_id = p.id)), '[]') AS storage
  FROM serialized_items u ${currentRevision}
  LEFT JOIN service_limits c ON c.revision_id = r.id AND c.model_id = m.id
  WHERE u.id = ANY($1::uuid[])`;

/**
 * $1 units, $2 part numbers: seals as fitted in the last visit whose kit closed with one of that number in the unit; the oldest cure of those
 * counts, and one without a cure date leaves it unknown.
 */
const sealsSql = `
  SELECT DISTINCT ON (w.unit_id, p.number) w.unit_id::text, p.number AS part_number,
    (k.closed_at AT TIME ZONE coalesce((SELECT zone FROM shop_profile WHERE id = 1), 'UTC'))::date::text AS installed_on, g.cures
  FROM work_orders w
  JOIN kits k ON k.work_order_id = w.id AND k.closed_at IS NOT NULL
  JOIN balances b ON b.place_kind = 'unit' AND b.place_ref = w.id::text AND b.on_hand > 0
  JOIN lots l ON l.id = b.lot_id JOIN parts p ON p.id = l.part_id
  CROSS JOIN LATERAL (SELECT CASE WHEN bool_or(o.cure_date IS NULL) THEN NULL ELSE jsonb_agg(o.cure_date) END AS cures
    FROM balances ob JOIN lots o ON o.id = ob.lot_id
    WHERE ob.place_kind = 'unit' AND ob.place_ref = w.id::text AND ob.on_hand > 0 AND o.part_id = p.id) g
  WHERE w.unit_id = ANY($1::uuid[]) AND p.number = ANY($2::text[])
  ORDER BY w.unit_id, p.number, k.closed_at DESC`;

/** What bears on some units beside their time between overhauls: so many statements however many units there are. */
export async function sourcesOfUnits(
  { ask, models }: { ask: Ask; models: Reads['models'] },
  { unitIds, asOf }: { unitIds: readonly string[]; asOf: string },
): Promise<Map<string, UnitSources>> {
  const limited = await ask<LimitedPart>(limitedSql, [unitIds]);
  const parts = grouped(limited);
  const times = await TimesOnRecord.of(models, [...new Set(limited.map(({ item_id }) => item_id))]);
  const totalOf: TotalOf = (itemId, measure) => times.on(itemId, asOf, measure).sinceNew;
  const kept = await ask<Kept>(keptSql, [unitIds]);
  const numbers = [...new Set(kept.flatMap(({ seals }) => seals.map(({ partNumber }) => partNumber)))];
  const fitted = grouped(numbers.length === 0 ? [] : await sealsOf(ask, unitIds, numbers));
  const directives = await standingsOfUnits(models, { unitIds, asked: { asOf, visit: null } });
  const keptOf = new Map(kept.map((row) => [row.unit_id, row]));
  return new Map(
    unitIds.map((id) => {
      const own = keptOf.get(id);
      const stands = directives.get(id);
      const known = new Map([stands?.unit.unit, ...(stands?.unit.parts ?? [])].flatMap((item) => lastTime(item)));
      const all = [
        lifeSources(parts.get(id) ?? [], { totalOf, asOf }),
        own ? keepingSources(own, { fitted: fitted.get(id) ?? [], asOf }) : { limits: [], notes: [] },
        directiveSources(stands?.standings ?? [], (itemId) => known.get(itemId)),
      ];
      return [
        id,
        {
          limits: all.flatMap(({ limits }) => limits),
          notes: all.flatMap(({ notes }) => notes),
          ...{ storage: own?.storage ?? [], storageRules: own?.storage_rules ?? [] },
        },
      ];
    }),
  );
}

type Item = { readonly itemId: string; readonly earlier?: readonly { on: string; hoursTenths: number }[] };

function lastTime(item: Item | undefined): [string, { on: string; hoursTenths: number }][] {
  const last = item?.earlier?.at(-1);
  return item && last ? [[item.itemId, last]] : [];
}

async function sealsOf(ask: Ask, unitIds: readonly string[], numbers: readonly string[]): Promise<FittedSeal[]> {
  const rows = await ask<Omit<FittedSeal, 'cured'> & { cures: string[] | null }>(sealsSql, [unitIds, numbers]);
  return rows.map(({ cures, ...row }) => ({ ...row, cured: cures === null ? null : oldest(cures) }));
}

/** Cure dates come as quarters or days; the one that is used up first is the oldest. */
function oldest(cures: readonly string[]): string | null {
  const at = (cure: string) => cureExpiry(cure, { months: 1 });
  return [...cures].sort((a, b) => (at(a) < at(b) ? -1 : 1))[0] ?? null;
}

function grouped<Row extends { unit_id: string }>(rows: readonly Row[]): Map<string, Row[]> {
  const by = new Map<string, Row[]>();
  for (const row of rows) by.set(row.unit_id, [...(by.get(row.unit_id) ?? []), row]);
  return by;
}
