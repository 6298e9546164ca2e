import type { allocationOperations } from '@hubwright/contracts/kits/allocation-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import type { FillKits } from '@hubwright/rules/allocation';
import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';
import { WorkerThread } from '../../platform/jobs/worker.ts';
import { askThrough } from './ask.ts';
import { coverQuestion } from './cover-question.ts';
import type { CoverState } from './cover-state.ts';
import { binsOf, fillFacts } from './fill.sql.ts';
import type { FillQuestion } from './fill.worker.ts';
import { fillQuestion } from './fill-question.ts';
import { type FillReply, fillReply } from './fill-reply.ts';
import { worthOf } from './fill-worth.ts';
import { KitCover } from './kit-cover.ts';

/** A person waits: after so long the best found is shown with how far it can be from the best possible. */
const searchMilliseconds = 2_000;

/** Which kits can be filled from the shelf now, best first. Worked out once per state of stock and kits, whoever asks. */
@Injectable()
export class FillQueries implements OnApplicationShutdown {
  private readonly worker = new WorkerThread<FillQuestion, FillKits>(
    { name: 'fill', beside: import.meta.url },
    { megabytes: 512, queue: 2 },
  );
  private known: { state: CoverState; revision: number; answer: Promise<FillReply> } | undefined;

  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(KitCover) private readonly cover: KitCover,
  ) {}

  async kitsToFill(): Promise<Reply<typeof allocationOperations.kitsToFill>> {
    return (await this.answer()).proposal;
  }

  /** By need date; a place in that order is where the next page begins. */
  async leftOut(input: Input<typeof allocationOperations.kitsLeftOut>) {
    const { leftOut } = await this.answer();
    const from = Number(input.after ?? 0) || 0;
    const to = from + input.limit;
    return { rows: leftOut.slice(from, to), next: to < leftOut.length ? String(to) : null };
  }

  private async answer(): Promise<FillReply> {
    const state = await this.cover.kept();
    if (this.known?.state !== state || this.known.revision !== state.revision) {
      const answer = this.compute(state);
      const known = { state, revision: state.revision, answer };
      this.known = known;
      answer.catch(() => {
        if (this.known === known) this.known = undefined;
      });
    }
    return this.known.answer;
  }

  async onApplicationShutdown(): Promise<void> {
    await this.worker.close();
  }

  private async compute(state: CoverState): Promise<FillReply> {
    const ask = askThrough(this.reads);
    const covers = state.all();
    const input = coverQuestion(
      covers.map(({ row }) => row),
      state.supply(),
      { basis: state.basis },
    );
    const facts = await fillFacts(ask);
    const worth = worthOf(facts, state.basis.today);
    const kits = new Map(facts.kits.map((kit) => [kit.id, { kit, worth: worth(kit, state.ofKit(kit.id)) }]));
    const question = fillQuestion(input, covers, (kitId) => kits.get(kitId)?.worth.value ?? 0);
    const answer = await this.worker.run({ ...question, ms: searchMilliseconds });
    const bins = await binsOf(ask, [...new Set(answer.picks.map(({ lot }) => lot))]);
    return fillReply({ state, currency: facts.currency, kits, question, answer, bins });
  }
}
