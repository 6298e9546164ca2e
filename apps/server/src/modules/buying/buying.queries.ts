import type { Input, Reply } from '@hubwright/contracts/operation';
import type { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import { usualBuyingCosts } from '@hubwright/contracts/purchasing/offer-operations';
import type { BuyingCosts, SuggestInput, Suggestion } from '@hubwright/rules/replenishment';
import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { WorkerThread } from '../../platform/jobs/worker.ts';
import { KitCover } from '../kits/public.ts';
import { type DeliveryRow, deliveriesSql, newestDeliveries } from '../purchasing/public.ts';
import { type CandidateRow, candidatesSql, monthsBack } from './candidate-rows.ts';
import { demandOf } from './demand.ts';
import { questionsOf } from './questions.ts';
import { type SuggestionRow, suggestionRows } from './suggestion-rows.ts';

@Injectable()
export class BuyingQueries implements OnApplicationShutdown {
  private readonly worker = new WorkerThread<SuggestInput[], (Suggestion | undefined)[]>(
    { name: 'suggest', beside: import.meta.url },
    { megabytes: 256, queue: 16 },
  );

  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(KitCover) private readonly cover: KitCover,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async list(
    input: Input<typeof buyingOperations.listSuggestions>,
  ): Promise<Reply<typeof buyingOperations.listSuggestions>> {
    const wanted = input.search?.toLowerCase() ?? '';
    const rows = (await this.all()).filter(
      ({ part, supplier }) =>
        `${part.number} ${part.description}`.toLowerCase().includes(wanted) &&
        (!input.supplierId || supplier?.id === input.supplierId),
    );
    const start = input.after ? rows.findIndex(({ part }) => part.id === input.after) + 1 : 0;
    const shown = rows.slice(start, start + input.limit);
    return { rows: shown, next: start + input.limit < rows.length ? (shown.at(-1)?.part.id ?? null) : null };
  }

  async onApplicationShutdown(): Promise<void> {
    await this.worker.close();
  }

  private async all(): Promise<SuggestionRow[]> {
    const [today, zone] = [await this.zone.today(this.clock.now()), await this.zone.zone()];
    const state = await this.cover.kept();
    const short = new Set(state.all().flatMap((line) => (line.short > 0 ? [line.row.part.id] : [])));
    for (const { part, months } of state.foreseen()) if (months.some((month) => month.short > 0)) short.add(part.id);
    const [candidates, deliveries, costs] = await Promise.all([
      this.reads.sql<CandidateRow>(candidatesSql, [[...short], zone, monthsBack, today]),
      this.reads.sql<DeliveryRow>(deliveriesSql, [zone, null, newestDeliveries, null]),
      this.costs(),
    ]);
    const demand = demandOf(state);
    const asked = questionsOf(candidates, { today, costs, demand, deliveries });
    const answers = await this.worker.run(asked.map(({ question }) => question));
    return suggestionRows(asked, answers, today);
  }

  private async costs(): Promise<BuyingCosts> {
    const row = (await this.reads.models.buyingCost.findUnique({ where: { id: 1 } })) ?? usualBuyingCosts;
    return {
      ...{ perOrder: Number(row.perOrder), keepingRate: Number(row.keepingRate), missing: Number(row.missingPiece) },
      reviewDays: row.reviewDays,
    };
  }
}
