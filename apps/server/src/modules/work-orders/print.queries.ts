import type { Input } from '@hubwright/contracts/operation';
import type { printOperations } from '@hubwright/contracts/work-orders/print-operations';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { printTravelers } from './print-traveler.ts';
import { TravelerQueries } from './travelers.queries.ts';

/** More parts than any unit has; common practice, no source. */
const mostOnPaper = 60;

@Injectable()
export class PrintQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(TravelerQueries) private readonly travelers: TravelerQueries,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async one({ travelerId }: Input<typeof printOperations.travelerPdf>): Promise<StreamableFile> {
    const traveler = found(
      await this.reads.models.traveler.findUnique({ where: { id: travelerId }, select: { number: true } }),
      'This traveler',
    );
    return this.printed([travelerId], traveler.number);
  }

  async all({ workOrderId }: Input<typeof printOperations.travelersPdf>): Promise<StreamableFile> {
    const workOrder = found(
      await this.reads.models.workOrder.findUnique({
        where: { id: workOrderId },
        select: {
          number: true,
          travelers: { select: { id: true }, orderBy: { number: 'asc' }, take: mostOnPaper },
        },
      }),
      'This work order',
    );
    const ids = workOrder.travelers.map(({ id }) => id);
    found(ids[0], `A traveler of ${workOrder.number}`);
    return this.printed(ids, `${workOrder.number}-travelers`);
  }

  private async printed(ids: readonly string[], name: string): Promise<StreamableFile> {
    const shop = found(await this.reads.models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
    const { caution } = shop.recordStatements as { caution: string };
    const travelers = [];
    // One after another: a paper is no reason to take every connection.
    for (const travelerId of ids) travelers.push(await this.travelers.detail({ travelerId }));
    const words = new Intl.DateTimeFormat('sv-SE', { timeZone: shop.zone, dateStyle: 'short', timeStyle: 'short' });
    const bytes = await printTravelers(travelers, {
      ...{ shopName: shop.name, caution, at: this.clock.now() },
      inWords: (instant) => words.format(new Date(instant)),
    });
    return new StreamableFile(bytes, { type: 'application/pdf', disposition: `inline; filename="${name}.pdf"` });
  }
}
