import type { customerOperations, Meter } from '@hubwright/contracts/customers/operations';
import type { SourceClass } from '@hubwright/contracts/inventory/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { figureShown } from './meter-figure.ts';

interface ReadingRow {
  aircraft_id: string;
  meter: Meter;
  read_on: string;
  hours_tenths: number;
  recorded_at: Date;
}

// One row per meter and aircraft: the newest.
const latestSql = `
  SELECT DISTINCT ON (aircraft_id, meter) aircraft_id, meter, read_on::text, hours_tenths, recorded_at
  FROM aircraft_readings WHERE aircraft_id = ANY($1::uuid[])
    AND NOT EXISTS (SELECT FROM struck_readings s WHERE s.reading_id = id)
  ORDER BY aircraft_id, meter, read_on DESC, hours_tenths DESC`;

@Injectable()
export class CustomerQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(
    input: Input<typeof customerOperations.listCustomers>,
  ): Promise<Reply<typeof customerOperations.listCustomers>> {
    const { search, after, limit } = input;
    const contains = search ? { contains: search, mode: 'insensitive' as const } : undefined;
    const last = after ? await this.reads.models.customer.findUnique({ where: { code: after } }) : null;
    const rows = await this.reads.models.customer.findMany({
      where: {
        AND: [
          contains ? { OR: [{ name: contains }, { code: contains }] } : {},
          last ? { OR: [{ name: { gt: last.name } }, { name: last.name, code: { gt: last.code } }] } : {},
        ],
      },
      orderBy: [{ name: 'asc' }, { code: 'asc' }],
      take: limit + 1,
      include: { _count: { select: { aircraft: true } } },
    });
    const shown = rows.slice(0, limit);
    return {
      rows: shown.map((row) => ({
        ...row,
        acceptedSources: row.acceptedSources as SourceClass[],
        aircraftCount: row._count.aircraft,
      })),
      next: rows.length > limit ? (shown.at(-1)?.code ?? null) : null,
    };
  }

  async show(customerId: string): Promise<Reply<typeof customerOperations.showCustomer>> {
    const customer = found(
      await this.reads.models.customer.findUnique({
        where: { id: customerId },
        include: { _count: { select: { aircraft: true } } },
      }),
      'This customer',
    );
    const { rows: aircraft } = await this.listAircraft({ customerId, limit: 200 });
    return {
      ...customer,
      acceptedSources: customer.acceptedSources as SourceClass[],
      aircraftCount: customer._count.aircraft,
      aircraft,
    };
  }

  async listAircraft(
    input: Input<typeof customerOperations.listAircraft>,
  ): Promise<Reply<typeof customerOperations.listAircraft>> {
    const { customerId, after, limit } = input;
    const rows = await this.reads.models.aircraft.findMany({
      where: { customerId, ...(after ? { registration: { gt: after } } : {}) },
      orderBy: { registration: 'asc' },
      take: limit + 1,
    });
    const shown = rows.slice(0, limit);
    const latest = await this.reads.sql<ReadingRow>(latestSql, [shown.map(({ id }) => id)]);
    return {
      rows: shown.map((row) => ({
        ...row,
        latestReadings: latest
          .filter((reading) => reading.aircraft_id === row.id)
          .map((reading) => ({
            meter: reading.meter,
            readOn: reading.read_on,
            ...figureShown(reading.meter, reading.hours_tenths),
            recordedAt: reading.recorded_at.toISOString(),
          })),
      })),
      next: rows.length > limit ? (shown.at(-1)?.registration ?? null) : null,
    };
  }
}
