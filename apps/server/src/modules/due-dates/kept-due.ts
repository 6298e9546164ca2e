import { Inject, Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { Cron, CronExpression } from '@nestjs/schedule';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { type KeptAsk, KeptResults } from '../../platform/database/kept-results.ts';
import { Reads } from '../../platform/database/reads.ts';
import type { WorkerProcess } from '../../platform/jobs/worker-process.ts';
import { LiveFeed } from '../../platform/live/live-feed.ts';
import { isAboutDueDates, type NewsRow, newsSql, touchedUnits } from './due-news.ts';
import { batch, type DueSlice, dueLock, dueSlice, type SliceDone } from './due-slices.ts';
import { recompute } from './kept-row.ts';

/** More units than this are worked out in a process of its own: for fewer it is not worth starting one. */
const mostHere = 1_000;
/** Its heap. A batch needs a few megabytes; the rest is what the program itself takes. */
const workerMegabytes = 128;
/** Batches the process does at a time; in between it is seen how far it is, and whether to stop. */
const batchesAtATime = 20;
/** Many commands in a row are taken in by one look. */
const coalesceMilliseconds = 150;
/** A list waits this long for a run over everything; then it shows what is kept and how far the run is. */
const patienceMilliseconds = 3_000;

const beginSql = `
  INSERT INTO due_state (id, transaction, row, whole_on)
  SELECT 1, coalesce(newest.transaction, 0), coalesce(newest.id, 0), NULL
  FROM (SELECT 1) one LEFT JOIN LATERAL (
    SELECT transaction, id FROM outbox WHERE transaction < pg_snapshot_xmin(pg_current_snapshot())::text::bigint
    ORDER BY transaction DESC, id DESC LIMIT 1) newest ON true
  ON CONFLICT (id) DO UPDATE SET transaction = excluded.transaction, row = excluded.row, whole_on = NULL`;
const countSql = `SELECT count(*)::int AS total FROM serialized_items WHERE kind = 'assembly'`;
const endSql = 'UPDATE due_state SET whole_on = $1::date WHERE id = 1';
const settleSql = 'UPDATE due_state SET transaction = $1::bigint, row = $2::bigint WHERE id = 1';
/** A position that no transaction has reached came with a database from elsewhere. */
const stateSql = `
  SELECT whole_on::text AS "wholeOn", transaction >= pg_snapshot_xmax(pg_current_snapshot())::text::bigint AS strange
  FROM due_state WHERE id = 1`;

/**
 * When every unit is next due, kept in `unit_due`. What commands write is taken in as it happens, and by whoever asks for a list, who so
 * never sees a date from before his own write; once a day everything is worked out again, because days go by.
 */
@Injectable()
export class KeptDue implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly log = new Logger('due dates');
  private done = 0;
  private total = 0;
  private run: Promise<void> | undefined;
  private timer: NodeJS.Timeout | undefined;
  private unsubscribe: (() => void) | undefined;
  private taking: Promise<void> = Promise.resolve();
  private readonly going = new Set<Promise<unknown>>();
  /** Rows after the settled position that were taken in already. */
  private ahead = new Set<string>();
  private stopped = false;
  private worker: WorkerProcess<DueSlice, SliceDone> | undefined;

  constructor(
    @Inject(KeptResults) private readonly kept: KeptResults,
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
    @Inject(LiveFeed) private readonly live: LiveFeed,
  ) {}

  onApplicationBootstrap(): void {
    this.unsubscribe = this.live.subscribe((event) => {
      if (isAboutDueDates(event)) this.soon();
    });
    void this.daily();
  }

  async onApplicationShutdown(): Promise<void> {
    this.stopped = true;
    this.unsubscribe?.();
    clearTimeout(this.timer);
    this.worker?.close();
    // What waited for a run may begin another look: the pool closes after the last of them.
    while (this.going.size > 0) await Promise.all(this.going);
  }

  /** Within the hour after the shop's midnight, and at a start where it was not done. Errors are logged: the next hour tries again. */
  @Cron(CronExpression.EVERY_HOUR)
  daily(): Promise<void> {
    return this.followed(this.ofToday());
  }

  private async ofToday(): Promise<void> {
    try {
      const { wholeOn } = await this.state();
      if (wholeOn !== (await this.today())) await this.whole();
    } catch (error) {
      this.complain(error);
    }
  }

  /** The day everything was worked out last, and how far a run under way has come. */
  async state(): Promise<{ wholeOn: string | null; running: { done: number; total: number } | null }> {
    const [row] = await this.reads.sql<{ wholeOn: string | null; strange: boolean }>(stateSql);
    return {
      wholeOn: row && !row.strange ? row.wholeOn : null,
      running: this.run ? { done: this.done, total: this.total } : null,
    };
  }

  /**
   * Comes back when the kept dates are those of today and hold all that was written until now. A run over everything is waited for a
   * moment only.
   */
  upToDate(): Promise<void> {
    return this.followed(this.withNews());
  }

  private async withNews(): Promise<void> {
    if (this.stopped) return;
    const { wholeOn } = await this.state();
    if (wholeOn !== (await this.today())) await this.patiently(this.whole());
    const rows = await this.reads.sql<NewsRow>(newsSql);
    // Whoever took them in may still be working them out.
    if (rows.every(({ position }) => this.ahead.has(position))) return this.taking.catch(() => undefined);
    this.taking = this.taking.catch(() => undefined).then(() => this.takeIn());
    await this.taking;
  }

  /** Works out every unit again, a batch at a time; who asks while it goes on waits for the one under way. */
  whole(): Promise<void> {
    this.run ??= this.followed(this.everything()).finally(() => {
      this.run = undefined;
    });
    return this.run;
  }

  private followed<T>(work: Promise<T>): Promise<T> {
    const ended = work
      .then(
        () => undefined,
        () => undefined,
      )
      .finally(() => this.going.delete(ended));
    this.going.add(ended);
    return work;
  }

  private soon(): void {
    if (this.timer || this.stopped) return;
    this.timer = setTimeout(() => {
      this.timer = undefined;
      if (!this.stopped) this.upToDate().catch((error) => this.complain(error));
    }, coalesceMilliseconds);
  }

  private async takeIn(): Promise<void> {
    if (this.stopped) return;
    const touched = await this.kept.transaction(dueLock, (ask) => this.news(ask));
    // A run that is under way has passed some units already: another follows it.
    if (touched === 'everything') await this.patiently(Promise.resolve(this.run).then(() => this.whole()));
  }

  private async patiently(run: Promise<void>): Promise<void> {
    const going = run.catch((error) => this.complain(error));
    let timer: NodeJS.Timeout | undefined;
    const patience = new Promise<void>((resolve) => {
      timer = setTimeout(resolve, patienceMilliseconds);
    });
    await Promise.race([going, patience]);
    clearTimeout(timer);
  }

  private async news(ask: KeptAsk): Promise<string[] | 'everything'> {
    const rows = await ask<NewsRow>(newsSql);
    const touched = await touchedUnits(
      ask,
      rows.filter(({ position }) => !this.ahead.has(position)),
    );
    if (touched !== 'everything') await this.recomputeAll(ask, touched);
    const settled = rows.filter((row) => row.settled).at(-1);
    if (settled) await ask(settleSql, [settled.transaction, settled.row]);
    this.ahead = new Set(rows.flatMap((row) => (row.settled ? [] : [row.position])));
    return touched;
  }

  private async recomputeAll(ask: KeptAsk, unitIds: readonly string[]): Promise<void> {
    const asked = { asOf: await this.today(), now: this.clock.now(), models: this.reads.models };
    for (let from = 0; from < unitIds.length; from += batch)
      await recompute(ask, unitIds.slice(from, from + batch), asked);
  }

  private async everything(): Promise<void> {
    if (this.stopped) return;
    const asOf = await this.today();
    [this.done, this.total] = [0, 0];
    await this.kept.transaction(dueLock, async (ask) => {
      await ask(beginSql);
      this.ahead = new Set();
      this.total = (await ask<{ total: number }>(countSql))[0]?.total ?? 0;
    });
    const slices = this.slices();
    let last: string | null = null;
    do {
      if (this.stopped) return;
      const done: SliceDone = await slices({ after: last, asOf, now: this.clock.now().toISOString() });
      this.done += done.units;
      last = done.last;
    } while (last !== null);
    await this.kept.transaction(dueLock, (ask) => ask(endSql, [asOf]));
  }

  /** One batch after the other here, or some at a time in a process of its own, so that requests never wait for many. */
  private slices(): (slice: Omit<DueSlice, 'batches'>) => Promise<SliceDone> {
    if (this.total <= mostHere)
      return (slice) => dueSlice({ kept: this.kept, reads: this.reads }, { ...slice, batches: 1 });
    this.worker ??= this.kept.worker({ name: 'due-slices', beside: import.meta.url }, { megabytes: workerMegabytes });
    const { worker } = this;
    return (slice) => worker.run({ ...slice, batches: batchesAtATime });
  }

  private today(): Promise<string> {
    return this.zone.today(this.clock.now());
  }

  private complain(error: unknown): void {
    // A process of the run ends with the server.
    if (this.stopped) return;
    this.log.warn(`could not work due dates out: ${error instanceof Error ? error.message : error}`);
  }
}
