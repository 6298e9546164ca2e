import type { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { addDays, daysBetween, endOfMonth } from '@hubwright/rules/dates';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { KeptDue } from './kept-due.ts';
import type { KeptRow } from './kept-row.ts';

type Asked = Input<typeof dueDateOperations.comingDue>;
type Answer = Reply<typeof dueDateOperations.comingDue>;
type Row = Answer['rows'][number];
type ListedRow = KeptRow & {
  readonly due_on: string;
  readonly customer_id: string;
  readonly customer: string;
  readonly model_id: string;
  readonly designation: string;
  readonly maker: string;
  readonly serial: string;
  readonly computed_on: string;
};

/**
 * $1 customer, $2 model, $3 first day, $4 last day, $5 text, $6 and $7 the last row of the page before, $8 most rows; null where not
 * asked. Values are known when it is planned, so that an index serves whatever was asked.
 */
export const comingSql = `
  SELECT d.unit_id::text, d.customer_id::text, d.model_id::text, d.aircraft_id::text, d.registration, d.position, d.due_on::text,
    d.earliest::text, d.latest::text, d.governed_by, d.governed_what, d.due_hours_tenths, d.hours_left_tenths, d.requirement,
    d.per_day, d.basis, d.past_hours, d.in_shop, d.computed_on::text, c.name AS customer, m.designation, u.maker,
    coalesce(u.serial, u.provisional_name, '') AS serial
  FROM unit_due d JOIN customers c ON c.id = d.customer_id JOIN serialized_items u ON u.id = d.unit_id
  JOIN unit_models m ON m.id = d.model_id
  WHERE NOT d.in_shop AND d.due_on <= $4::date AND ($1::uuid IS NULL OR d.customer_id = $1) AND ($2::uuid IS NULL OR d.model_id = $2)
    AND ($3::date IS NULL OR d.due_on >= $3) AND ($6::date IS NULL OR (d.due_on, d.unit_id) > ($6, $7::uuid))
    AND ($5::text IS NULL OR strpos(lower(concat_ws(' ', u.serial, u.provisional_name, m.designation, d.registration, c.name)), lower($5)) > 0)
  ORDER BY d.due_on, d.unit_id LIMIT $8`;

/** The due list, read from what is kept. */
@Injectable()
export class ComingDueQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
    @Inject(KeptDue) private readonly kept: KeptDue,
  ) {}

  /** Overdue first, then by likely date; what has no date at all is left to the unit's own page. */
  async list(input: Asked): Promise<Answer> {
    await this.kept.upToDate();
    const today = await this.zone.today(this.clock.now());
    const { first, last } = spanOf(input, today);
    const [afterOn, afterId] = input.after?.split(' ') ?? [null, null];
    const rows = await this.reads.sql<ListedRow>(comingSql, [
      ...[input.customerId ?? null, input.modelId ?? null, first, last, input.search || null],
      ...[afterOn, afterId, input.limit + 1],
    ]);
    const shown = rows.slice(0, input.limit);
    const end = shown.at(-1);
    return {
      rows: shown.map((row) => listed(row, today)),
      next: rows.length > input.limit && end ? `${end.due_on} ${end.unit_id}` : null,
      kept: await this.kept.state(),
    };
  }
}

/** What is overdue is there unless a first day is asked for. */
function spanOf({ from, to, month, days }: Asked, today: string): { first: string | null; last: string } {
  if (month !== undefined) return { first: from ?? `${month}-01`, last: to ?? endOfMonth(`${month}-01`) };
  return { first: from ?? null, last: to ?? addDays(today, days) };
}

function listed(row: ListedRow, today: string): Row {
  const unknown = 'unknown' as const;
  return {
    unit: {
      id: row.unit_id,
      modelId: row.model_id,
      designation: row.designation,
      maker: row.maker,
      serial: row.serial,
    },
    customer: { id: row.customer_id, name: row.customer },
    ...{ aircraftId: row.aircraft_id, registration: row.registration, position: row.position },
    ...{ dueOn: row.due_on, earliest: row.earliest ?? unknown, latest: row.latest ?? unknown },
    ...{ dueHoursTenths: row.due_hours_tenths ?? unknown, hoursLeftTenths: row.hours_left_tenths ?? unknown },
    daysLeft: daysBetween(today, row.due_on),
    governedBy: row.governed_by as Row['governedBy'],
    governedWhat: row.governed_what,
    perDay: row.per_day ?? unknown,
    // A likely date that went by without a reading asks for one; only a reading past the limit or a day gone by is overdue.
    overdue: row.past_hours || (row.governed_by !== 'hours' && row.due_on < today),
    ...{ basis: row.basis, requirement: row.requirement as Row['requirement'], computedOn: row.computed_on },
  };
}
