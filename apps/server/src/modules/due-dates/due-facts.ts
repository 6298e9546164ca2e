import { rulesInForce, type TboCondition } from '@hubwright/rules/due';
import type { Tenths } from '@hubwright/rules/times';
import { cyclingOf } from './cycling.ts';
import type { DueFacts, DueRule } from './due-of-unit.ts';
import { flyingOf } from './flying.ts';

interface RuleOnRecord extends DueRule, TboCondition {}

/** An installation as it stands: corrections and removals are in it. */
interface IntervalOnRecord {
  readonly id: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly customerId: string;
  readonly position: string;
  readonly meter: string;
  readonly from: string;
  readonly fromTenths: number | null;
  readonly to: string | null;
  readonly toTenths: number | null;
  /** Which of its meters of cycles counts, where it was said. */
  readonly cyclesMeter?: string | null;
}

/** A unit with what its due date is computed from, one row each. */
export interface DueRow {
  readonly id: string;
  readonly model_id: string;
  readonly designation: string;
  readonly maker: string;
  readonly serial: string;
  /** Null while nobody has read it. */
  readonly read_serial: string | null;
  /** Of the last work order: whom it belonged to and which aircraft it came from. */
  readonly order_customer_id: string | null;
  readonly order_aircraft_id: string | null;
  readonly order_registration: string | null;
  /** Whose that aircraft is by now. */
  readonly order_aircraft_customer_id: string | null;
  readonly in_shop: boolean;
  /** As somebody said it last: how it is used and when it was made. */
  readonly use_category: string | null;
  readonly made_on: string | null;
  readonly overhaul_on: string | null;
  readonly overhaul_meter: string | null;
  readonly overhaul_meter_tenths: number | null;
  readonly rules: RuleOnRecord[];
  readonly papers: {
    recordedOn: string;
    basis: string;
    sinceNewTenths: number | null;
    sinceOverhaulTenths: number | null;
  }[];
  readonly visits: { receivedOn: string; leftOn: string | null }[];
  readonly intervals: IntervalOnRecord[];
  readonly changes: { aircraftId: string; meter: string; on: string; oldTenths: Tenths; newTenths: number }[];
  readonly readings: { aircraftId: string; readOn: string; hoursTenths: number; meter: string }[];
}

const papersSql = `(SELECT jsonb_agg(jsonb_build_object('recordedOn', t.recorded_on::text, 'basis', t.basis,
      'sinceNewTenths', t.since_new_tenths, 'sinceOverhaulTenths', t.since_overhaul_tenths)
    ORDER BY t.recorded_on, t.recorded_at, t.id) FROM time_records t WHERE t.item_id = u.id)`;
const visitsSql = `(SELECT jsonb_agg(jsonb_build_object('receivedOn', w.received_on::text,
      'leftOn', (coalesce(w.shipped_at, w.closed_at) AT TIME ZONE coalesce((SELECT zone FROM shop_profile WHERE id = 1), 'UTC'))::date::text)
    ORDER BY w.received_on, w.number) FROM work_orders w WHERE w.unit_id = u.id)`;
const rulesSql = `(SELECT jsonb_agg(jsonb_build_object('hoursTenths', t.hours_tenths, 'months', t.months, 'endOfMonth', t.end_of_month,
      'requirement', t.requirement, 'applicationId', t.application_id,
      'serialFrom', t.serial_from, 'serialTo', t.serial_to, 'useCategory', t.use_category,
      'ageFromMonths', t.age_from_months, 'ageToMonths', t.age_to_months, 'revision', manual.number || ' rev. ' || r.revision))
    FROM tbo_rules t JOIN manual_revisions r ON r.id = t.revision_id JOIN manuals manual ON manual.id = r.manual_id
    WHERE r.manual_id = m.manual_id AND r.state = 'current' AND t.model_id = m.id
      AND (t.application_id IS NULL OR t.application_id = last.application_id))`;
const intervalsSql = `SELECT coalesce(jsonb_agg(jsonb_build_object('id', i.interval_id, 'aircraftId', i.aircraft_id,
      'registration', f.registration, 'customerId', f.customer_id, 'position', i.position, 'meter', i.meter,
      'from', i.from_date::text, 'fromTenths', i.from_tenths, 'to', i.to_date::text, 'toTenths', i.to_tenths,
      'cyclesMeter', i.cycles_meter) ORDER BY i.from_date), '[]') AS rows,
    array_agg(i.aircraft_id) AS aircraft_ids
  FROM aircraft_intervals i JOIN aircraft f ON f.id = i.aircraft_id
  WHERE i.item_id = u.id AND NOT i.withdrawn AND NOT EXISTS (SELECT FROM aircraft_intervals l WHERE l.supersedes_id = i.id)`;
const changesSql = `(SELECT jsonb_agg(jsonb_build_object('aircraftId', x.aircraft_id, 'meter', x.meter, 'on', x.changed_on::text,
      'oldTenths', coalesce(to_jsonb(x.old_tenths), '"unknown"'), 'newTenths', x.new_tenths) ORDER BY x.changed_on)
    FROM meter_changes x WHERE x.aircraft_id = ANY(flown.ids) AND NOT x.withdrawn
      AND NOT EXISTS (SELECT FROM meter_changes l WHERE l.supersedes_id = x.id))`;
const readingsSql = `(SELECT json_agg(json_build_object('aircraftId', x.aircraft_id, 'readOn', x.read_on::text,
      'hoursTenths', x.hours_tenths, 'meter', x.meter) ORDER BY x.read_on, x.hours_tenths)
    FROM aircraft_readings x WHERE x.aircraft_id = ANY(flown.ids) AND NOT EXISTS (SELECT FROM struck_readings s WHERE s.reading_id = x.id)
      AND x.read_on BETWEEN least(o.recorded_on, $2::date - 400) AND $2::date)`;

/**
 * $1 units, $2 today. Rules are those of the current revision for the last work order's application, else the general ones. Readings
 * reach back to the overhaul, and 13 months at least: beyond the 12 the projection weighs.
 */
export const dueSql = `
  SELECT u.id::text, m.id::text AS model_id, m.designation, u.maker, coalesce(u.serial, u.provisional_name, '') AS serial,
    u.serial AS read_serial, last.customer_id::text AS order_customer_id, a.id::text AS order_aircraft_id,
    a.registration AS order_registration, a.customer_id::text AS order_aircraft_customer_id, said.use_category, said.made_on::text,
    EXISTS (SELECT FROM work_orders here WHERE here.unit_id = u.id AND here.closed_at IS NULL AND here.stage <> 'shipped') AS in_shop,
    o.recorded_on::text AS overhaul_on, o.meter AS overhaul_meter, o.meter_tenths AS overhaul_meter_tenths,
    coalesce(${rulesSql}, '[]') AS rules, coalesce(${papersSql}, '[]') AS papers, coalesce(${visitsSql}, '[]') AS visits,
    stood.rows AS intervals, coalesce(${changesSql}, '[]') AS changes, coalesce(${readingsSql}, '[]'::json) AS readings
  FROM serialized_items u
  JOIN unit_models m ON m.id = u.model_id
  LEFT JOIN LATERAL (SELECT w.customer_id, w.aircraft_id, w.application_id FROM work_orders w
    WHERE w.unit_id = u.id ORDER BY w.received_on DESC, w.number DESC LIMIT 1) last ON true
  LEFT JOIN LATERAL (SELECT x.use_category, x.made_on FROM unit_uses x WHERE x.item_id = u.id
    ORDER BY x.recorded_at DESC, x.id DESC LIMIT 1) said ON true
  LEFT JOIN aircraft a ON a.id = last.aircraft_id
  LEFT JOIN LATERAL (SELECT t.recorded_on, t.meter, t.meter_tenths FROM time_records t
    WHERE t.item_id = u.id AND t.basis = 'overhaul' ORDER BY t.recorded_on DESC, t.recorded_at DESC LIMIT 1) o ON true
  CROSS JOIN LATERAL (${intervalsSql}) stood
  CROSS JOIN LATERAL (SELECT array_remove(array_append(stood.aircraft_ids, last.aircraft_id), NULL) AS ids) flown
  WHERE u.kind = 'assembly' AND u.joined_into_id IS NULL AND u.id = ANY($1::uuid[])`;

export function factsOf(row: DueRow, asOf: string): DueFacts {
  const { read_serial: serial, use_category: use, made_on: madeOn, overhaul_on: overhaulOn } = row;
  const inForce = rulesInForce(row.rules, { serial, use, madeOn, overhauledOn: overhaulOn });
  const { countedFrom, rules, doubts } =
    overhaulOn === null ? fromItsPapers(row, { ...inForce, asOf }) : { ...inForce, countedFrom: overhaulOn };
  const flownBy = row.papers.flatMap(({ recordedOn: on, sinceOverhaulTenths: tenths }) =>
    tenths === null || on < (overhaulOn ?? '') ? [] : [{ on, tenths }],
  );
  const flying = flyingOf({ ...row, overhaul_on: countedFrom }, asOf);
  const flown = 'sinceOverhaul' in flying ? [{ on: asOf, tenths: flying.sinceOverhaul.atLeastTenths }] : [];
  return {
    ...{ overhaulOn: countedFrom, rules, doubts, asOf, flying },
    flownBy: [...flownBy, ...flown],
    cycling: cyclingOf(row, asOf),
  };
}

/**
 * No day of an overhaul is on record, but a paper says what it has flown since one, or that it never had one: hours are counted on from
 * that paper. Months have no day to begin with, and that is said.
 */
function fromItsPapers(row: DueRow, { rules, doubts, asOf }: Required<Pick<DueFacts, 'rules' | 'doubts' | 'asOf'>>) {
  const said = row.papers.find(
    ({ recordedOn, sinceOverhaulTenths }) => sinceOverhaulTenths !== null && recordedOn <= asOf,
  );
  if (!said) return { countedFrom: null, rules, doubts };
  const why = `No day of an overhaul is on record: hours are counted from the paper of ${said.recordedOn}, and limits in months are left out.`;
  const inHours = rules.flatMap((rule) => (rule.hoursTenths === null ? [] : { ...rule, months: null }));
  return { countedFrom: said.recordedOn, rules: inHours, doubts: [...doubts, why] };
}

/** Whose it is and where it sits: on the aircraft it is reported on, else on the one its last order named. */
export function whereNow(row: DueRow) {
  const newest = row.intervals.at(-1);
  if (newest && newest.to === null && !row.in_shop) {
    const { customerId, aircraftId, registration, position } = newest;
    return { customer_id: customerId, aircraft_id: aircraftId, registration, position };
  }
  const off = newest && newest.from >= (row.visits.at(-1)?.leftOn ?? '');
  // Out there it is whoever's aircraft it is taken to be on; here, and off the aircraft, it is theirs who sent it.
  const flies = !off && !row.in_shop && row.order_aircraft_id !== null;
  return {
    customer_id: (flies ? row.order_aircraft_customer_id : null) ?? row.order_customer_id ?? newest?.customerId ?? null,
    aircraft_id: off ? null : row.order_aircraft_id,
    registration: off ? null : row.order_registration,
    position: null,
  };
}
