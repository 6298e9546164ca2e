import type { Foresight, Share } from '@hubwright/rules/foreseen';
import { type Alternate, affectedParts, type Cover, type CoverInput } from '@hubwright/rules/shortage';
import { Inject, Injectable, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { WorkerThread } from '../../platform/jobs/worker.ts';
import { LiveFeed } from '../../platform/live/live-feed.ts';
import { currentPolicy } from './allocation-policy.ts';
import { askThrough } from './ask.ts';
import { ChangedParts, type News } from './changed-parts.ts';
import { coverQuestion } from './cover-question.ts';
import { type LineRow, linesOfKit, openLines, supplyOf } from './cover-rows.ts';
import { type Basis, CoverState } from './cover-state.ts';
import type { ForeseeJob } from './foresee.worker.ts';
import { type ForeseenPartRow, foreseenCovers, foreseenDemands, foreseenPartsSql } from './foreseen-cover.ts';
import { ForeseenState } from './foreseen-state.ts';
import { type LineCover, lineCovers } from './line-cover.ts';
import { allLinks } from './linked-parts.ts';
import { currentOdds } from './odds.ts';

/** While somebody looked within this time, changes are taken in as they happen; later the next who asks waits for them. */
const watchedMilliseconds = 10 * 60_000;
const coalesceMilliseconds = 60;
/** The outbox keeps two hours; after an hour without a look it is no longer relied upon. */
const trustedMilliseconds = 60 * 60_000;

/**
 * What covers every line of every open kit, kept and brought up to date by what commands wrote since: only parts that were touched,
 * or are linked to them by alternates, are worked out again. One run answers all who asked before it began; the next waits for it.
 */
@Injectable()
export class KitCover implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly worker = new WorkerThread<CoverInput, Cover>(
    { name: 'cover', beside: import.meta.url },
    { megabytes: 512, queue: 4 },
  );
  private readonly foreseeing = new WorkerThread<ForeseeJob, Foresight | Share[]>(
    { name: 'foresee', beside: import.meta.url },
    { megabytes: 256, queue: 8 },
  );
  private foreseen: ForeseenState | undefined;
  private readonly changes = new ChangedParts();
  private state: CoverState | undefined;
  private running: Promise<CoverState> | undefined;
  private waiting: Promise<CoverState> | undefined;
  private timer: NodeJS.Timeout | undefined;
  private unsubscribe: (() => void) | undefined;
  private askedAt = Number.NEGATIVE_INFINITY;
  private lookedAt = Number.NEGATIVE_INFINITY;

  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
    @Inject(LiveFeed) private readonly live: LiveFeed,
  ) {}

  onApplicationBootstrap(): void {
    this.unsubscribe = this.live.subscribe(() => this.soon());
  }

  async onApplicationShutdown(): Promise<void> {
    this.unsubscribe?.();
    clearTimeout(this.timer);
    await Promise.all([this.worker.close(), this.foreseeing.close()]);
  }

  /** Lines of all open kits as they are now, by need date, kit and sequence. */
  async ofOpenKits(): Promise<readonly LineCover[]> {
    return (await this.kept()).all();
  }

  /** The same with what it was worked out from. */
  kept(): Promise<CoverState> {
    this.askedAt = performance.now();
    return this.newest();
  }

  /** Everything foreseen, as of the last look; look first. */
  get foresight(): ForeseenState | undefined {
    return this.foreseen;
  }

  /** Lines of a kit that asks for nothing any more: where its pieces are, without cover. */
  async ofClosedKit(kitId: string): Promise<LineCover[]> {
    const ask = askThrough(this.reads);
    const lines = await linesOfKit(ask, kitId);
    const settled = lines.map((line) => ({ ...line, source: 'reused' as const }));
    const nothing = { supply: { stock: [], orders: [], alternates: [] }, basis: await this.basis() };
    return lineCovers(settled, { lines: [], free: [] }, nothing).map((cover, index) => ({
      ...cover,
      row: lines[index] ?? cover.row,
    }));
  }

  /** Answers a question that is only supposed, off the request thread like the real one. */
  suppose(question: CoverInput): Promise<Cover> {
    return this.worker.run(question);
  }

  private soon(): void {
    if (this.timer || performance.now() - this.askedAt > watchedMilliseconds) return;
    this.timer = setTimeout(() => {
      this.timer = undefined;
      // Whoever asks next hears of what went wrong.
      this.newest().catch(() => undefined);
    }, coalesceMilliseconds);
  }

  private newest(): Promise<CoverState> {
    if (!this.running) return this.start();
    // Whoever asks now may have just changed something: a run that began before would not show it.
    this.waiting ??= this.running.then(
      () => this.next(),
      () => this.next(),
    );
    return this.waiting;
  }

  private next(): Promise<CoverState> {
    this.waiting = undefined;
    return this.start();
  }

  private start(): Promise<CoverState> {
    const run = this.bringUpToDate();
    this.running = run;
    const done = () => {
      if (this.running === run) this.running = undefined;
    };
    run.then(done, (error) => {
      // What was heard and not worked out is not heard again.
      this.state = undefined;
      done();
      return error;
    });
    return run;
  }

  private async bringUpToDate(): Promise<CoverState> {
    const ask = askThrough(this.reads);
    const isTrusted = performance.now() - this.lookedAt < trustedMilliseconds;
    this.lookedAt = performance.now();
    const basis = await this.basis();
    const { state, foreseen } = this;
    const isSame = state && state.basis.today === basis.today && state.basis.policy.version === basis.policy.version;
    if (!(isSame && isTrusted && foreseen)) return this.anew(basis);
    const news = await this.changes.next(ask);
    if (news.everything) return this.anew(basis);
    const changed = [...touchedBy(news, state), ...(await foreseen.next(ask, news.foreseen))];
    if (changed.length > 0) {
      const links = await allLinks(ask);
      await this.takeIn(state, affectedParts(changed, [...state.linked, ...links]), links);
    }
    return state;
  }

  private async anew(basis: Basis): Promise<CoverState> {
    const ask = askThrough(this.reads);
    await this.changes.start(ask);
    const links = await allLinks(ask);
    const lines = await openLines(ask);
    const foreseen = new ForeseenState(this.foreseeing, { basis, zone: await this.zone.zone() });
    await foreseen.start(ask);
    this.foreseen = foreseen;
    const state = new CoverState(basis, links);
    const parts = affectedParts([...lines.map(({ part }) => part.id), ...foreseen.parts()], links);
    await this.work(state, { parts, lines, links });
    this.state = state;
    return state;
  }

  private async takeIn(state: CoverState, parts: Set<string>, links: readonly Alternate[]): Promise<void> {
    const lines = await openLines(askThrough(this.reads), [...parts]);
    await this.work(state, { parts, lines, links });
  }

  private async work(
    state: CoverState,
    of: { parts: Set<string>; lines: readonly LineRow[]; links: readonly Alternate[] },
  ): Promise<void> {
    const ask = askThrough(this.reads);
    const ahead = (partId: string) => this.foreseen?.part(partId);
    const asked = [...of.parts].filter((partId) => ahead(partId) !== undefined);
    const parts = asked.length === 0 ? [] : await ask<ForeseenPartRow>(foreseenPartsSql, [asked]);
    const supply = await supplyOf(ask, [...of.parts]);
    const { basis } = state;
    const question = coverQuestion(of.lines, supply, { basis, foreseen: foreseenDemands(parts, ahead) });
    const answer = await this.worker.run(question);
    const foreseen = foreseenCovers(parts, ahead, answer);
    state.replace(of.parts, lineCovers(of.lines, answer, { supply, basis }), { supply, links: of.links, foreseen });
  }

  private async basis(): Promise<Basis> {
    const ask = askThrough(this.reads);
    const [today, policy] = await Promise.all([this.zone.today(this.clock.now()), currentPolicy(ask)]);
    const { state } = this;
    // Odds are told from answers up to yesterday: they hold for the day and the rule.
    const isSame = state?.basis.today === today && state.basis.policy.version === policy.version;
    const odds = isSame ? state.basis.odds : await currentOdds(ask, { today, zone: await this.zone.zone(), policy });
    return { today, policy, odds };
  }
}

/** Parts named by what was written, and parts of kits that asked for something until then. */
function touchedBy(news: News, state: CoverState): string[] {
  return [...new Set([...news.parts, ...state.partsOf(news)])];
}
