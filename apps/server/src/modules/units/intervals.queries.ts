import type { CycleMeter, Meter } from '@hubwright/contracts/customers/operations';
import type { Reply } from '@hubwright/contracts/operation';
import type { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { Inject, Injectable } from '@nestjs/common';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';

type Row = Reply<typeof intervalOperations.aircraftIntervals>['rows'][number];

@Injectable()
export class IntervalQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(itemId: string): Promise<{ rows: Row[] }> {
    const rows = await this.reads.models.aircraftInterval.findMany({
      where: { itemId },
      orderBy: [{ fromDate: 'desc' }, { recordedAt: 'desc' }, { id: 'desc' }],
      take: 200,
      include: { aircraft: { select: { id: true, registration: true } }, supersededBy: { select: { id: true } } },
    });
    const people = await this.reads.models.person.findMany({
      where: { id: { in: [...new Set(rows.map(({ recordedBy }) => recordedBy))] } },
      select: { id: true, displayName: true },
    });
    const names = new Map(people.map(({ id, displayName }) => [id, displayName]));
    return {
      rows: rows.map((row) => ({
        ...{ id: row.id, intervalId: row.intervalId, aircraft: row.aircraft, basis: row.basis },
        position: row.position as Row['position'],
        meter: row.meter as Meter,
        from: fromDbDate(row.fromDate),
        fromTenths: row.fromTenths ?? 'unknown',
        to: fromDbDateOrNull(row.toDate),
        toTenths: row.toDate ? (row.toTenths ?? 'unknown') : null,
        cycles: row.cyclesMeter === null ? null : cyclesOf(row, row.cyclesMeter),
        recordedBy: names.get(row.recordedBy) ?? '',
        recordedAt: row.recordedAt.toISOString(),
        state: row.supersededBy ? 'superseded' : row.withdrawn ? 'withdrawn' : 'stands',
      })),
    };
  }
}

function cyclesOf(
  { fromCycles, toCycles, toDate }: { fromCycles: number | null; toCycles: number | null; toDate: Date | null },
  meter: string,
): Row['cycles'] {
  return {
    ...{ meter: meter as CycleMeter, from: fromCycles ?? 'unknown' },
    to: toDate ? (toCycles ?? 'unknown') : null,
  };
}
