import { Inject, Injectable, Logger } from '@nestjs/common';
import { Cron, CronExpression } from '@nestjs/schedule';
import { CLOCK, type Clock } from '../command/clock.ts';
import { lockKey } from '../command/locks.ts';
import { Database } from '../database/client.ts';
import { stagedFor } from './stage-file.command.ts';
import { FILES, type FileStore, fileLock } from './store.ts';

const hour = 60 * 60 * 1000;
const perRound = 500;
const named = `SELECT 1 FROM stored_files WHERE hash = $1 UNION ALL SELECT 1 FROM staged_files WHERE hash = $1 OR thumbnail_hash = $1`;

/** Takes away what was sent and never named by a record: rows and bytes. What a record names is never touched. */
@Injectable()
export class StagedFiles {
  private readonly log = new Logger('staged files');

  constructor(
    @Inject(Database) private readonly database: Database,
    @Inject(FILES) private readonly files: FileStore,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** Files that waited a day, and what a killed server left half received. Errors are logged: the next hour tries again. */
  @Cron(CronExpression.EVERY_HOUR)
  async prune(): Promise<void> {
    await this.logged(async () => {
      const now = this.clock.now().getTime();
      await this.files.clearWorkplaces(new Date(Date.now() - hour));
      const { pool } = this.database;
      const { rows } = await pool.query<{ hash: string; thumbnail: string | null }>(
        `DELETE FROM staged_files WHERE id IN (SELECT id FROM staged_files WHERE uploaded_at < $1 ORDER BY uploaded_at LIMIT ${perRound})
         RETURNING hash, thumbnail_hash AS thumbnail`,
        [new Date(now - stagedFor)],
      );
      for (const { hash, thumbnail } of rows) for (const each of [hash, thumbnail]) if (each) await this.discard(each);
    });
  }

  /** Bytes that no row names at all: a server was killed between keeping them and naming them. */
  @Cron(CronExpression.EVERY_DAY_AT_3AM)
  async sweep(): Promise<void> {
    await this.logged(async () => {
      const before = new Date(Date.now() - stagedFor);
      for (let part = 0; part < 256; part += 1) {
        const name = part.toString(16).padStart(2, '0');
        for (const hash of await this.files.keptBefore(name, before)) await this.discard(hash);
      }
    });
  }

  /** Held against uploads until the bytes are gone: one that comes now keeps them anew. */
  private async discard(hash: string): Promise<void> {
    const client = await this.database.pool.connect();
    const lock = String(lockKey(fileLock(hash)));
    try {
      await client.query('SELECT pg_advisory_lock($1::bigint)', [lock]);
      const { rowCount } = await client.query(named, [hash]);
      if (rowCount === 0) await this.files.discard(hash);
    } finally {
      await client.query('SELECT pg_advisory_unlock($1::bigint)', [lock]).catch(() => undefined);
      client.release();
    }
  }

  private async logged(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (error) {
      this.log.warn(`could not prune: ${error instanceof Error ? error.message : error}`);
    }
  }
}
