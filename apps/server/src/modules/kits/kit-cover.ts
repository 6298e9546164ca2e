import type { Cover, CoverInput } from '@hubwright/rules/shortage';
import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { WorkerThread } from '../../platform/jobs/worker.ts';
import { askThrough } from './ask.ts';
import { coverQuestion } from './cover-question.ts';
import { linesOfKit, openLines, supplyOf } from './cover-rows.ts';
import { type LineCover, lineCovers } from './line-cover.ts';

/** What covers every line of every open kit. One run answers all who asked before it began; the next waits for it. */
@Injectable()
export class KitCover implements OnApplicationShutdown {
  private readonly worker = new WorkerThread<CoverInput, Cover>(
    { name: 'cover', beside: import.meta.url },
    { megabytes: 512, queue: 4 },
  );
  private running: Promise<LineCover[]> | undefined;
  private waiting: Promise<LineCover[]> | undefined;

  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  /** Lines of all open kits, by need date, kit and sequence. */
  ofOpenKits(): Promise<LineCover[]> {
    if (!this.running) return this.start();
    // Whoever asks now may have just changed something: a run that began before would not show it.
    this.waiting ??= this.running.then(
      () => this.next(),
      () => this.next(),
    );
    return this.waiting;
  }

  /** Lines of a kit that asks for nothing any more: where its pieces are, without cover. */
  async ofClosedKit(kitId: string): Promise<LineCover[]> {
    const lines = await linesOfKit(askThrough(this.reads), kitId);
    const settled = lines.map((line) => ({ ...line, source: 'reused' as const }));
    const nothing = { supply: { stock: [], orders: [], alternates: [] }, today: await this.today() };
    return lineCovers(settled, { lines: [], free: [] }, nothing).map((cover, index) => ({
      ...cover,
      row: lines[index] ?? cover.row,
    }));
  }

  async onApplicationShutdown(): Promise<void> {
    await this.worker.close();
  }

  private next(): Promise<LineCover[]> {
    this.waiting = undefined;
    return this.start();
  }

  private start(): Promise<LineCover[]> {
    const run = this.compute();
    this.running = run;
    const done = () => {
      if (this.running === run) this.running = undefined;
    };
    run.then(done, done);
    return run;
  }

  private async compute(): Promise<LineCover[]> {
    const ask = askThrough(this.reads);
    const today = await this.today();
    const lines = await openLines(ask);
    const supply = await supplyOf(ask, [...new Set(lines.map(({ part }) => part.id))]);
    const answer = await this.worker.run(coverQuestion(lines, supply, today));
    return lineCovers(lines, answer, { supply, today });
  }

  private today(): Promise<string> {
    return this.zone.today(this.clock.now());
  }
}
