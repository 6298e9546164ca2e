import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { type CountClass, countClasses, countDue } from '@hubwright/rules/stock';
import { Inject, Injectable } from '@nestjs/common';
import type { Actor } from '../../platform/command/actor.ts';
import { CLOCK, type Clock, dateIn } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { countListSql, countValuesSql, lotsInBinsSql } from './counts.sql.ts';

type Due = Reply<typeof countOperations.countsDue>['rows'][number];
type CountRow = Reply<typeof countOperations.listCounts>['rows'][number];

interface InBin extends Omit<Due, 'countClass' | 'dueOn' | 'lastCounted'> {
  readonly serialised: boolean;
  readonly lastCounted: Date | null;
  readonly receivedAt: Date;
}

const day = 86_400_000;

@Injectable()
export class CountsQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async due(input: Input<typeof countOperations.countsDue>): Promise<Reply<typeof countOperations.countsDue>> {
    const now = this.clock.now();
    const zone = await this.zone.zone();
    const until = dateIn(zone, new Date(now.getTime() + input.withinDays * day));
    const values = await this.reads.sql<{ part: string; units: number; unitPrice: string }>(countValuesSql, [
      new Date(now.getTime() - 365 * day),
    ]);
    const classes = countClasses(values);
    const lots = await this.reads.sql<InBin>(lotsInBinsSql, [input.bin ?? null]);
    const due = lots.flatMap(({ serialised, receivedAt, ...lot }): Due[] => {
      const countClass: CountClass = serialised ? 'A' : (classes.get(lot.part.id) ?? 'C');
      const dueOn = countDue(countClass, dateIn(zone, lot.lastCounted ?? receivedAt));
      if (dueOn > until && input.bin === undefined) return [];
      return [{ ...lot, countClass, dueOn, lastCounted: lot.lastCounted?.toISOString() ?? null }];
    });
    // In the order of the walk; a place in it is where the next page begins.
    const from = Number(input.after ?? 0) || 0;
    const to = from + input.limit;
    return { rows: due.slice(from, to), next: to < due.length ? String(to) : null };
  }

  /**
   * As the person who asks may see it: what they counted themselves stays blind until it is decided, and what is to be
   * counted again is blind to everybody who may count it.
   */
  async list(
    input: Input<typeof countOperations.listCounts>,
    actor: Actor | undefined,
  ): Promise<Reply<typeof countOperations.listCounts>> {
    const [at, after] = input.after?.split('~') ?? [];
    const rows = await this.reads.sql<Omit<CountRow, 'countedAt'> & { countedAt: Date }>(countListSql, [
      input.state ?? null,
      input.lotId ?? null,
      at ?? null,
      after ?? null,
      input.limit + 1,
      actor?.personId ?? null,
      mayCount(actor),
    ]);
    const shown = rows.slice(0, input.limit).map((row) => ({ ...row, countedAt: row.countedAt.toISOString() }));
    const last = shown.at(-1);
    return { rows: shown, next: rows.length > input.limit && last ? `${last.countedAt}~${last.id}` : null };
  }
}

function mayCount(actor: Actor | undefined): boolean {
  const { access } = countOperations.countLot;
  return Array.isArray(access) && (actor?.roles ?? []).some((role) => access.includes(role));
}
