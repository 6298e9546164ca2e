import { Inject, Injectable, Logger } from '@nestjs/common';
import { Cron, CronExpression } from '@nestjs/schedule';
import { CLOCK, type Clock } from '../command/clock.ts';
import { Database } from '../database/client.ts';
import { KeyFolder } from '../records/shop-key.ts';
import { takeAnchor } from '../records/take-anchor.ts';

/**
 * Signs where the record chains stand, so that a tail cut off later is found. What was written since the last anchor is
 * not yet covered by one: at most ten minutes.
 */
@Injectable()
export class Anchoring {
  private readonly log = new Logger('anchoring');

  constructor(
    @Inject(Database) private readonly database: Database,
    @Inject(KeyFolder) private readonly keys: KeyFolder,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** Errors are logged, not thrown: the next one covers what this one did not. */
  @Cron(CronExpression.EVERY_10_MINUTES)
  async anchor(): Promise<void> {
    try {
      await takeAnchor(this.database.serverUrl, this.keys, this.clock.now());
    } catch (error) {
      this.log.warn(`no anchor: ${error instanceof Error ? error.message : error}`);
    }
  }
}
