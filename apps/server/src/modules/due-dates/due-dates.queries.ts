import type { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import type { UseCategory } from '@hubwright/contracts/manuals/service-limits';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type OverhaulsLeft, overhaulsLeft } from '../work-orders/public.ts';
import { type DueRow, dueSql, factsOf } from './due-facts.ts';
import type { Flying } from './flying.ts';
import { noSources } from './limit-sources/source.ts';
import { sourcesOfUnits } from './limit-sources/sources-of-units.ts';
import { wholeDue } from './limit-sources/whole-due.ts';

@Injectable()
export class DueDateQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async nextDue({
    unitId,
    hoursPerMonth,
  }: Input<typeof dueDateOperations.nextDue>): Promise<Reply<typeof dueDateOperations.nextDue>> {
    const asOf = await this.zone.today(this.clock.now());
    const [first] = await this.reads.sql<DueRow>(dueSql, [[unitId], asOf]);
    const row = found(first, 'This unit');
    const facts = factsOf(row, asOf);
    const ask = <Row extends object>(text: string, parameters?: readonly unknown[]) =>
      this.reads.sql<Row>(text, parameters);
    const sources = await sourcesOfUnits({ ask, models: this.reads.models }, { unitIds: [unitId], asOf });
    const { others, notes, ...due } = wholeDue({ ...facts, hoursPerMonth }, sources.get(unitId) ?? noSources);
    return {
      ...{
        ...due,
        others: [...others],
        notes: [...notes, ...materialNotes(await overhaulsLeft(this.reads.models, unitId))],
      },
      unit: unitOf(row),
      lastOverhaul:
        row.overhaul_on === null ? null : { on: row.overhaul_on, meterTenths: row.overhaul_meter_tenths ?? 'unknown' },
      flying: flyingOut(facts.flying),
      limits: (facts.rules as DueRow['rules']).map(
        ({ hoursTenths, months, endOfMonth, requirement, revision, useCategory }) => ({
          ...{ hoursTenths, months, endOfMonth, requirement, revision },
          use: useCategory as UseCategory | null,
        }),
      ),
      readings: readingsUsed(row, facts.flying),
      asOf,
    };
  }
}

/** An estimate for planning; whether a blade may fly again is decided by measuring it. */
function materialNotes(blades: readonly OverhaulsLeft[]): string[] {
  return blades.map(({ position, serial, overhauls, basis }) => {
    const name = `${position}${serial === null ? '' : ` serial ${serial}`}`;
    if (overhauls === 'unknown') return `Material of ${name}: how many overhauls it may give is not known (${basis}).`;
    return `Material of ${name}: about ${overhauls} more ${overhauls === 1 ? 'overhaul' : 'overhauls'}, an estimate (${basis}).`;
  });
}

function unitOf({ id, designation, maker, serial }: DueRow) {
  return { id, designation, maker, serial };
}

function flyingOut(flying: Flying): Reply<typeof dueDateOperations.nextDue>['flying'] {
  const { kind } = flying;
  if (kind === 'contradictory') return { kind, registration: null, since: null };
  const since = kind === 'on' ? flying.from : kind === 'off' ? flying.since : null;
  return { kind, registration: flying.registration, since };
}

/** As they were read, of the meter that the answer rests on. */
function readingsUsed({ readings, overhaul_on }: DueRow, flying: Flying) {
  if (flying.kind === 'off' || flying.kind === 'contradictory') return [];
  const { aircraftId, meter } = flying;
  return readings
    .filter((one) => one.aircraftId === aircraftId && one.meter === meter && one.readOn >= (overhaul_on ?? ''))
    .map(({ readOn, hoursTenths }) => ({ readOn, hoursTenths, meter }));
}
