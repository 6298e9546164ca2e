import { type SerialPlace, serialPlace } from '@hubwright/rules/directives';
import type { DueFacts, DueRule } from './due-of-unit.ts';

interface RuleOnRecord extends DueRule {
  readonly applicationId: string | null;
  readonly revision: string;
  readonly serialFrom: string | null;
  readonly serialTo: string | null;
}

/** A unit with what its due date is computed from, one row each. */
export interface DueRow {
  readonly id: string;
  readonly designation: string;
  readonly maker: string;
  readonly serial: string;
  /** Null while nobody has read it. */
  readonly read_serial: string | null;
  readonly model_id: string;
  readonly customer_id: string | null;
  readonly aircraft_id: string | null;
  readonly registration: string | null;
  readonly position: string | null;
  readonly in_shop: boolean;
  readonly overhaul_on: string | null;
  readonly overhaul_meter: string | null;
  readonly overhaul_meter_tenths: number | null;
  readonly rules: RuleOnRecord[];
  readonly readings: { readOn: string; hoursTenths: number; meter: string }[];
}

/**
 * $1 units, $2 today. The last work order says customer, aircraft and application. Rules are those
 * of the current revision for that application, else the general ones; readings reach back 13 months, beyond the 12 the
 * projection weighs.
 */
export const dueSql = `
  SELECT u.id::text, m.id::text AS model_id, m.designation, u.maker, coalesce(u.serial, u.provisional_name, '') AS serial, u.serial AS read_serial,
    last.customer_id::text, a.id::text AS aircraft_id, a.registration, NULL AS position,
    EXISTS (SELECT FROM work_orders here WHERE here.unit_id = u.id AND here.closed_at IS NULL AND here.stage <> 'shipped') AS in_shop,
    o.recorded_on::text AS overhaul_on, o.meter AS overhaul_meter, o.meter_tenths AS overhaul_meter_tenths,
    coalesce((SELECT jsonb_agg(jsonb_build_object('hoursTenths', t.hours_tenths, 'months', t.months, 'endOfMonth', t.end_of_month,
        'requirement', t.requirement, 'applicationId', t.application_id,
        'serialFrom', t.serial_from, 'serialTo', t.serial_to, 'revision', manual.number || ' rev. ' || r.revision))
      FROM tbo_rules t JOIN manual_revisions r ON r.id = t.revision_id JOIN manuals manual ON manual.id = r.manual_id
      WHERE r.manual_id = m.manual_id AND r.state = 'current' AND t.model_id = m.id
        AND (t.application_id IS NULL OR t.application_id = last.application_id)), '[]') AS rules,
    coalesce((SELECT jsonb_agg(jsonb_build_object('readOn', x.read_on::text, 'hoursTenths', x.hours_tenths, 'meter', x.meter)
        ORDER BY x.read_on, x.hours_tenths)
      FROM aircraft_readings x WHERE x.aircraft_id = last.aircraft_id AND (o.meter IS NULL OR x.meter = o.meter)
        AND NOT EXISTS (SELECT FROM struck_readings s WHERE s.reading_id = x.id)
        AND x.read_on BETWEEN greatest(coalesce(o.recorded_on, $2::date - 400), $2::date - 400) AND $2::date), '[]') AS readings
  FROM serialized_items u
  JOIN unit_models m ON m.id = u.model_id
  LEFT JOIN LATERAL (SELECT w.customer_id, w.aircraft_id, w.application_id FROM work_orders w
    WHERE w.unit_id = u.id ORDER BY w.received_on DESC, w.number DESC LIMIT 1) last ON true
  LEFT JOIN aircraft a ON a.id = last.aircraft_id
  LEFT JOIN LATERAL (SELECT t.recorded_on, t.meter, t.meter_tenths FROM time_records t
    WHERE t.item_id = u.id AND t.basis = 'overhaul' ORDER BY t.recorded_on DESC, t.recorded_at DESC LIMIT 1) o ON true
  WHERE u.kind = 'assembly' AND u.joined_into_id IS NULL AND u.id = ANY($1::uuid[])`;

/**
 * Rules of the unit's own application take the place of the general ones. One for other serials is left out; where the serial cannot
 * be compared with the range it counts, so that no doubt moves a date later.
 */
export function rulesThatApply(all: DueRow['rules'], serial: string | null): DueRow['rules'] {
  const rows = all.filter((rule) => placeOf(rule, serial) !== 'out');
  const own = rows.filter(({ applicationId }) => applicationId !== null);
  return own.length > 0 ? own : rows;
}

function placeOf({ serialFrom, serialTo }: RuleOnRecord, serial: string | null): SerialPlace {
  return serialPlace(serial, {
    ...(serialFrom === null ? {} : { from: serialFrom }),
    ...(serialTo === null ? {} : { to: serialTo }),
  });
}

export function factsOf(row: DueRow, asOf: string): DueFacts {
  return {
    overhaul: row.overhaul_on === null ? null : { on: row.overhaul_on, meterTenths: row.overhaul_meter_tenths },
    rules: rulesThatApply(row.rules, row.read_serial),
    doubts: rulesThatApply(row.rules, row.read_serial)
      .filter((rule) => placeOf(rule, row.read_serial) === 'look')
      .map(({ serialFrom, serialTo }) => `${serialFrom ?? 'the first'} to ${serialTo ?? 'the last'}`),
    readings: oneMeter(row),
    asOf,
  };
}

/** Two meters run differently: only the one the overhaul was recorded by, else the one read last. */
function oneMeter({ overhaul_meter, readings }: DueRow): DueRow['readings'] {
  const meter = overhaul_meter ?? readings.at(-1)?.meter;
  return readings.filter((reading) => reading.meter === meter);
}
