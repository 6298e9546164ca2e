import type { InstrumentKind } from '@hubwright/contracts/manuals/words';
import type { Input, Reply } from '@hubwright/contracts/operation';
import type { processOperations } from '@hubwright/contracts/processes/operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { Prisma } from '../../platform/database/generated/client.ts';
import { Reads } from '../../platform/database/reads.ts';

// What is out of service is not overdue, whatever its date says.
const mostOverdueFirst = [
  { inService: 'desc' },
  { calibrationDueOn: 'asc' },
  { tag: 'asc' },
] satisfies Prisma.InstrumentOrderByWithRelationInput[];

@Injectable()
export class InstrumentQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async list(
    input: Input<typeof processOperations.listInstruments>,
  ): Promise<Reply<typeof processOperations.listInstruments>> {
    const { kind, search, after, limit, order } = input;
    const contains = search ? { contains: search, mode: 'insensitive' as const } : undefined;
    const today = await this.zone.today(this.clock.now());
    const rows = await this.reads.models.instrument.findMany({
      where: {
        ...(kind ? { kind } : {}),
        ...(contains ? { OR: [{ tag: contains }, { title: contains }] } : {}),
      },
      orderBy: order === 'due' ? mostOverdueFirst : { tag: 'asc' },
      ...(after ? { cursor: { tag: after }, skip: 1 } : {}),
      take: limit + 1,
    });
    const shown = rows.slice(0, limit).map((row) => {
      const calibrationDueOn = fromDbDate(row.calibrationDueOn);
      return {
        ...row,
        kind: row.kind as InstrumentKind,
        calibratedOn: fromDbDate(row.calibratedOn),
        calibrationDueOn,
        inCalibration: row.inService && calibrationDueOn >= today,
      };
    });
    return { rows: shown, next: rows.length > limit ? (shown.at(-1)?.tag ?? null) : null };
  }
}
