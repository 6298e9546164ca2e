import { Inject, Injectable, Logger } from '@nestjs/common';
import { Cron, CronExpression } from '@nestjs/schedule';
import { CLOCK, type Clock } from '../command/clock.ts';
import { Database } from '../database/client.ts';

const hour = 60 * 60 * 1000;
/** A request may be repeated with its key this long; offline tablets send within a shift. */
const receiptsKept = 72 * hour;
/** A dashboard away longer than this reads everything anew. */
const outboxKept = 2 * hour;
/** A table that was sent and not applied. */
const tablesKept = 24 * hour;

/** Removes what only served for a while: receipts, live events, counted sign-in tries, tables nobody applied. Records are never touched. */
@Injectable()
export class Pruning {
  private readonly log = new Logger('pruning');

  constructor(
    @Inject(Database) private readonly database: Database,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** Errors are logged, not thrown: the next hour tries again. */
  @Cron(CronExpression.EVERY_HOUR)
  async prune(): Promise<void> {
    const now = this.clock.now().getTime();
    try {
      await this.database.prisma.receipt.deleteMany({ where: { createdAt: { lt: new Date(now - receiptsKept) } } });
      await this.database.prisma.outbox.deleteMany({ where: { at: { lt: new Date(now - outboxKept) } } });
      await this.database.prisma.stagedTable.deleteMany({ where: { uploadedAt: { lt: new Date(now - tablesKept) } } });
      await this.database.prisma.signInAttempt.deleteMany({ where: { expire: { lt: BigInt(now - 24 * hour) } } });
    } catch (error) {
      this.log.warn(`could not prune: ${error instanceof Error ? error.message : error}`);
    }
  }
}
