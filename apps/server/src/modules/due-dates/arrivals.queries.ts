import type { arrivalOperations } from '@hubwright/contracts/due-dates/arrival-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { askThrough } from '../kits/public.ts';
import { type ArrivingUnit, arrivalsByMonth, conventionsOf } from './arrivals.ts';
import { assumptionInForce } from './assumption-in-force.ts';
import { KeptDue } from './kept-due.ts';

const unitsSql = `
  SELECT d.model_id::text AS "modelId", m.designation, d.requirement IS NOT DISTINCT FROM 'required' AS "isRequired",
    coalesce(d.earliest, d.due_on)::text AS earliest, d.due_on::text AS likely, d.latest::text
  FROM unit_due d JOIN unit_models m ON m.id = d.model_id
  WHERE NOT d.in_shop AND d.due_on IS NOT NULL AND d.customer_id IS NOT NULL
    AND ($1::uuid IS NULL OR d.customer_id = $1) AND ($2::uuid IS NULL OR d.model_id = $2)`;

const withoutDateSql = `
  SELECT count(*)::int AS count FROM unit_due d
  WHERE NOT d.in_shop AND d.due_on IS NULL AND d.customer_id IS NOT NULL
    AND ($1::uuid IS NULL OR d.customer_id = $1) AND ($2::uuid IS NULL OR d.model_id = $2)`;

/** What is likely to arrive, by the dates that are kept. */
@Injectable()
export class ArrivalQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
    @Inject(KeptDue) private readonly kept: KeptDue,
  ) {}

  async expected({
    months,
    customerId,
    modelId,
  }: Input<typeof arrivalOperations.expectedArrivals>): Promise<Reply<typeof arrivalOperations.expectedArrivals>> {
    const about = [customerId ?? null, modelId ?? null];
    await this.kept.upToDate();
    const today = await this.zone.today(this.clock.now());
    const [units, [without], assumption] = await Promise.all([
      this.reads.sql<ArrivingUnit>(unitsSql, about),
      this.reads.sql<{ count: number }>(withoutDateSql, about),
      assumptionInForce(askThrough(this.reads)),
    ]);
    return {
      today,
      ...arrivalsByMonth(units, { today, months }, assumption.recommendedPercent),
      withoutDate: without?.count ?? 0,
      assumption: { ...assumption, since: assumption.since?.toISOString() ?? null },
      conventions: conventionsOf(assumption.recommendedPercent),
    };
  }
}
