import type { meterOperations } from '@hubwright/contracts/customers/meter-operations';
import type { Meter } from '@hubwright/contracts/customers/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { figureShown } from './meter-figure.ts';

@Injectable()
export class MeterQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async ofAircraft(aircraftId: string): Promise<Reply<typeof meterOperations.metersOfAircraft>> {
    const aircraft = found(
      await this.reads.models.aircraft.findUnique({
        where: { id: aircraftId },
        include: {
          readings: { orderBy: [{ readOn: 'desc' }, { hoursTenths: 'desc' }], take: 500, include: { struck: true } },
          meterChanges: {
            where: { supersededBy: null, withdrawn: false },
            orderBy: { changedOn: 'desc' },
            take: 100,
          },
        },
      }),
      'This aircraft',
    );
    return {
      registration: aircraft.registration,
      readings: aircraft.readings.map((row) => ({
        id: row.id,
        readOn: fromDbDate(row.readOn),
        meter: row.meter as Meter,
        ...figureShown(row.meter, row.hoursTenths),
        recordedAt: row.recordedAt.toISOString(),
        struckBecause: row.struck?.reason ?? null,
      })),
      changes: aircraft.meterChanges.map((row) => ({
        id: row.id,
        meter: row.meter as Meter,
        changedOn: fromDbDate(row.changedOn),
        oldTenths: row.oldTenths ?? 'unknown',
        newTenths: row.newTenths,
        basis: row.basis,
      })),
    };
  }
}
