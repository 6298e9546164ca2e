import type { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type DueRow, dueSql, factsOf } from './due-facts.ts';
import { dueOfUnit } from './due-of-unit.ts';

/** A shop this size knows a few thousand units; beyond that the due list needs dates kept ready, not computed as asked. */
const mostUnits = 5000;

@Injectable()
export class DueDateQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async nextDue({ unitId }: Input<typeof dueDateOperations.nextDue>): Promise<Reply<typeof dueDateOperations.nextDue>> {
    const asOf = await this.zone.today(this.clock.now());
    const [first] = await this.reads.sql<DueRow>(dueSql, [unitId, null, 1, asOf]);
    const row = found(first, 'This unit');
    const facts = factsOf(row, asOf);
    return {
      ...dueOfUnit(facts),
      unit: unitOf(row),
      lastOverhaul: facts.overhaul
        ? { on: facts.overhaul.on, meterTenths: facts.overhaul.meterTenths ?? 'unknown' }
        : null,
      limits: (facts.rules as DueRow['rules']).map(
        ({ applicationId: _, serialFrom: __, serialTo: ___, ...limit }) => limit,
      ),
      readings: facts.readings as DueRow['readings'],
      asOf,
    };
  }

  /** Overdue first, then by likely date; what has no date at all is left to the unit's own page. */
  async comingDue(
    input: Input<typeof dueDateOperations.comingDue>,
  ): Promise<Reply<typeof dueDateOperations.comingDue>> {
    const asOf = await this.zone.today(this.clock.now());
    const rows = await this.reads.sql<DueRow>(dueSql, [null, input.customerId ?? null, mostUnits, asOf]);
    const due = rows
      .map((row) => ({ row, answer: dueOfUnit(factsOf(row, asOf)) }))
      .filter(
        ({ row, answer }) =>
          row.customer_id !== null && typeof answer.daysLeft === 'number' && answer.daysLeft <= input.days,
      )
      .sort(
        (a, b) => Number(a.answer.daysLeft) - Number(b.answer.daysLeft) || a.row.serial.localeCompare(b.row.serial),
      );
    return {
      rows: due.slice(0, input.limit).map(({ row, answer }) => ({
        ...answer,
        unit: unitOf(row),
        customer: { id: row.customer_id ?? '', name: row.customer ?? '' },
        registration: row.registration,
      })),
      next: null,
    };
  }
}

function unitOf({ id, designation, maker, serial }: DueRow) {
  return { id, designation, maker, serial };
}
