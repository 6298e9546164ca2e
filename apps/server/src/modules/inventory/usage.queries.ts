import type { valueOperations } from '@hubwright/contracts/inventory/value-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { addMonths } from '@hubwright/rules/dates';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';

interface MonthRow {
  readonly month: string;
  readonly issued: number;
  readonly returned: number;
  readonly received: number;
  readonly scrapped: number;
  readonly counted: number;
}

const months = 24;
const stock = "('receiving', 'quarantine', 'bin')";
const work = "('tray', 'unit', 'rack')";
const sum = (where: string) => `coalesce(sum(m.quantity) FILTER (WHERE ${where}), 0)::int`;

const usageSql = `
  SELECT to_char(m.at AT TIME ZONE $3, 'YYYY-MM') AS month,
    ${sum(`m.from_kind IN ${stock} AND m.to_kind IN ${work}`)} AS issued,
    ${sum(`m.from_kind IN ${work} AND m.to_kind IN ${stock}`)} AS returned,
    ${sum(`m.from_kind = 'supplier'`)} - ${sum(`m.to_kind = 'supplier'`)} AS received,
    ${sum(`m.to_kind = 'scrap'`)} - ${sum(`m.from_kind = 'scrap'`)} AS scrapped,
    ${sum(`m.from_kind = 'count'`)} - ${sum(`m.to_kind = 'count'`)} AS counted
  FROM movements m JOIN lots l ON l.id = m.lot_id
  WHERE m.part_id = $1 AND l.origin <> 'taken-off' AND m.at >= $2::date::timestamp AT TIME ZONE $3
  GROUP BY 1`;

/** What became of a part, month by month of the shop's calendar. */
@Injectable()
export class UsageQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async partUsage({
    partId,
  }: Input<typeof valueOperations.partUsage>): Promise<Reply<typeof valueOperations.partUsage>> {
    found(await this.reads.models.part.findUnique({ where: { id: partId }, select: { id: true } }), 'This part');
    const today = await this.zone.today(this.clock.now());
    const thisMonth = `${today.slice(0, 7)}-01`;
    const first = addMonths(thisMonth, 1 - months);
    const rows = await this.reads.sql<MonthRow>(usageSql, [partId, first, await this.zone.zone()]);
    const none = { issued: 0, returned: 0, received: 0, scrapped: 0, counted: 0 };
    return {
      months: Array.from({ length: months }, (_, ago) => {
        const since = addMonths(thisMonth, -ago);
        const month = since.slice(0, 7);
        return { ...none, ...rows.find((row) => row.month === month), month, since, before: addMonths(since, 1) };
      }),
    };
  }
}
