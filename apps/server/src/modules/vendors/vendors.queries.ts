import type { Input, Reply } from '@hubwright/contracts/operation';
import type { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { daysBetween } from '@hubwright/rules/dates';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { blockToSend, namedTraveler, type TurnRow, turnSql, withTraveler } from '../work-orders/public.ts';

type Orders = Reply<typeof vendorOperations.listVendorOrders>;
type Line = Orders['rows'][number]['lines'][number];

const whole = {
  supplier: { select: { id: true, code: true, name: true } },
  lines: { orderBy: { id: 'asc' }, include: { step: { include: withTraveler } } },
  pieces: { orderBy: { id: 'asc' }, include: { lot: { include: { part: { select: { number: true } } } } } },
} as const;

@Injectable()
export class VendorQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async list({ state, limit, after }: Input<typeof vendorOperations.listVendorOrders>): Promise<Orders> {
    const today = await this.zone.today(this.clock.now());
    const rows = await this.reads.models.vendorOrder.findMany({
      where: {
        state: state === 'back' ? 'back' : 'out',
        ...(state === 'late' ? { expectedOn: { lt: toDbDate(today) } } : {}),
        ...(after ? { number: { lt: after } } : {}),
      },
      orderBy: { number: 'desc' },
      take: limit + 1,
      include: whole,
    });
    const shown = rows.slice(0, limit);
    return {
      rows: shown.map(({ supplier, lines, pieces, sentOn, expectedOn, state: at, ...order }) => ({
        ...order,
        vendor: supplier,
        state: at as 'out' | 'back',
        sentOn: fromDbDate(sentOn),
        expectedOn: fromDbDate(expectedOn),
        daysLate: at === 'out' ? Math.max(0, daysBetween(fromDbDate(expectedOn), today)) : 0,
        lines: lines.map(lineOf),
        pieces: pieces
          .filter(({ quantity, back, lost }) => quantity > back + lost)
          .map(({ lot, lotId, quantity, back, lost }) => ({
            ...{ lotId, lotCode: lot.code, part: lot.part.number },
            quantity: quantity - back - lost,
          })),
      })),
      next: rows.length > limit ? (shown.at(-1)?.number ?? null) : null,
    };
  }

  async outside(): Promise<Reply<typeof vendorOperations.outsideWork>> {
    const turns = await this.reads.sql<TurnRow>(turnSql, [null, null, 5000]);
    const now = this.clock.now();
    return {
      rows: turns
        .filter(({ outside, vendor }) => outside && vendor?.condition !== null)
        .filter(({ vendor }) => vendor?.condition !== 'good' && vendor?.condition !== 'lost')
        .map((turn) => ({
          stepId: turn.step_id,
          travelerId: turn.traveler_id,
          travelerNumber: turn.traveler_number,
          workOrderId: turn.work_order_id,
          workOrderNumber: turn.work_order_number,
          customer: turn.customer,
          partClass: turn.part_class as Line['partClass'],
          position: turn.position,
          work: turn.title,
          readySince: turn.ready_since.toISOString(),
          blocked: blockToSend(turn, now)?.detail ?? null,
        })),
    };
  }
}

type Stored = Awaited<ReturnType<Reads['models']['vendorLine']['findMany']>>[number] & {
  step: { title: string; traveler: Parameters<typeof namedTraveler>[0] };
};

function lineOf({ id, stepId, backAt, condition, certificate, note, step }: Stored): Line {
  return {
    ...namedTraveler(step.traveler),
    ...{ id, stepId, certificate, note },
    work: step.title,
    backAt: backAt?.toISOString() ?? null,
    condition: condition as Line['condition'],
  };
}
