import type { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type DueRow, dueSql, factsOf } from './due-facts.ts';
import { dueOfUnit } from './due-of-unit.ts';

@Injectable()
export class DueDateQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async nextDue({ unitId }: Input<typeof dueDateOperations.nextDue>): Promise<Reply<typeof dueDateOperations.nextDue>> {
    const asOf = await this.zone.today(this.clock.now());
    const [first] = await this.reads.sql<DueRow>(dueSql, [[unitId], asOf]);
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
}

function unitOf({ id, designation, maker, serial }: DueRow) {
  return { id, designation, maker, serial };
}
