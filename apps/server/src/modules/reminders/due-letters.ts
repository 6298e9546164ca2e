import type { dueLetter, LetterUnit } from '@hubwright/contracts/reminders/shapes';
import { reminderStage } from '@hubwright/rules/reminders';
import type { z } from 'zod';
import type { askThrough } from '../kits/public.ts';
import { noMailBecause, type ReminderSettings } from './settings-in-force.ts';

type Ask = ReturnType<typeof askThrough>;

export interface DueUnit extends LetterUnit {
  /** The day the unit's time counts from: after the next overhaul or compliance the intervals begin anew. */
  readonly countsFrom: string;
}
export type LetterDue = Omit<z.output<typeof dueLetter>, 'units'> & { readonly units: readonly DueUnit[] };

interface Row extends Omit<DueUnit, 'intervalDays'> {
  readonly customerId: string;
  readonly code: string;
  readonly name: string;
  readonly contactName: string;
  readonly email: string;
  readonly address: string;
  readonly refusedOn: string | null;
  readonly told: number[];
}

/** A letter that names more than this is no letter any more; what is left over is in the next. */
const mostUnits = 500;
const chunk = 200;

/** $1 today, $2 customers. The next few customers, by code, with a unit out there whose date comes within $3 days. */
const customersSql = `
  SELECT c.id::text, c.code FROM customers c
  WHERE c.code > $2 AND EXISTS (SELECT FROM unit_due d WHERE d.customer_id = c.id AND NOT d.in_shop AND d.due_on <= $1::date + $3::int)
  ORDER BY c.code LIMIT ${chunk}`;

const unitsSql = `
  SELECT c.id::text AS "customerId", c.code, c.name, c.contact_name AS "contactName", c.email, c.address,
    CASE WHEN said.wants_letters THEN NULL ELSE said.said_on::text END AS "refusedOn",
    d.unit_id::text AS "unitId", m.designation, coalesce(u.serial, u.provisional_name, '') AS serial, d.registration,
    d.due_on::text AS "dueOn", d.earliest::text, d.latest::text, d.due_on - $1::date AS "daysLeft",
    (d.past_hours OR (d.governed_by <> 'hours' AND d.due_on < $1::date)) AS "isOverdue", d.governed_what AS governs, d.requirement, d.basis,
    since.day::text AS "countsFrom", coalesce(told.days, '{}') AS told
  FROM unit_due d JOIN customers c ON c.id = d.customer_id
  JOIN serialized_items u ON u.id = d.unit_id JOIN unit_models m ON m.id = u.model_id
  LEFT JOIN LATERAL (SELECT r.wants_letters, r.said_on FROM reminder_choices r WHERE r.customer_id = c.id
    ORDER BY r.sequence DESC LIMIT 1) said ON true
  CROSS JOIN LATERAL (SELECT greatest(
    (SELECT max(t.recorded_on) FROM time_records t WHERE t.item_id = d.unit_id AND t.basis = 'overhaul'),
    (SELECT max(x.done_on) FROM directive_compliances x WHERE x.item_id = d.unit_id), date '1900-01-01') AS day) since
  CROSS JOIN LATERAL (SELECT array_agg(DISTINCT lu.interval_days) AS days FROM reminder_letter_units lu
    JOIN reminder_deliveries x ON x.letter_id = lu.letter_id
    WHERE lu.unit_id = d.unit_id AND lu.counts_from = since.day AND x.state <> 'withdrawn') told
  WHERE d.customer_id = ANY($2::uuid[]) AND NOT d.in_shop AND d.due_on <= $1::date + $3::int
  ORDER BY c.code, d.due_on, serial, d.unit_id`;

export interface LettersAsked {
  readonly today: string;
  readonly settings: ReminderSettings;
  readonly printOnlyBecause: string | null;
}

/** The letters of named customers that are due today, with the reason where nothing may go. */
export async function lettersOf(ask: Ask, customerIds: readonly string[], asked: LettersAsked): Promise<LetterDue[]> {
  const { today, settings } = asked;
  const rows = await ask<Row>(unitsSql, [today, [...customerIds], Math.max(...settings.intervals)]);
  const letters = new Map<string, LetterDue & { units: DueUnit[] }>();
  for (const row of rows) {
    const stage = reminderStage(row.daysLeft, { intervals: settings.intervals, told: row.told });
    if (stage === null) continue;
    const letter = letters.get(row.customerId) ?? { ...headOf(row, asked), units: [] };
    letters.set(row.customerId, letter);
    if (letter.units.length < mostUnits) letter.units.push(unitOf(row, stage));
  }
  return [...letters.values()];
}

/** The letters due today by customer's code after `after`, at most `limit`; only customers that have units near are read. */
export async function lettersDue(
  ask: Ask,
  asked: LettersAsked,
  { after, limit }: { after: string; limit: number },
): Promise<LetterDue[]> {
  const letters: LetterDue[] = [];
  let from = after;
  for (;;) {
    const within = Math.max(...asked.settings.intervals);
    const customers = await ask<{ id: string; code: string }>(customersSql, [asked.today, from, within]);
    letters.push(
      ...(await lettersOf(
        ask,
        customers.map(({ id }) => id),
        asked,
      )),
    );
    const last = customers.at(-1);
    if (!last || customers.length < chunk || letters.length >= limit) return letters.slice(0, limit);
    from = last.code;
  }
}

function headOf(row: Row, { settings, printOnlyBecause }: LettersAsked): Omit<LetterDue, 'units'> {
  const heldBecause = heldReason(row.refusedOn, settings);
  const canMail = row.email !== '' && noMailBecause(settings, printOnlyBecause) === null;
  return {
    customer: { id: row.customerId, code: row.code, name: row.name },
    to: { name: row.contactName, email: row.email, address: row.address },
    heldBecause,
    ways: heldBecause === null ? [...(canMail ? (['e-mail'] as const) : []), 'paper'] : [],
  };
}

export function heldReason(refusedOn: string | null, { isOn }: Pick<ReminderSettings, 'isOn'>): string | null {
  if (refusedOn !== null) return `This customer asked on ${refusedOn} for no reminder letters.`;
  return isOn ? null : 'Reminder letters are turned off in this shop.';
}

function unitOf(row: Row, intervalDays: number): DueUnit {
  const { unitId, designation, serial, registration, dueOn, earliest, latest, daysLeft, isOverdue } = row;
  const { governs, requirement, basis, countsFrom } = row;
  return {
    ...{ unitId, designation, serial, registration, intervalDays, dueOn, earliest, latest, daysLeft, isOverdue },
    ...{ governs, requirement, basis, countsFrom },
  };
}
