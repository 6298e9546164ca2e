import { Inject, Injectable } from '@nestjs/common';
import { lockKey } from '../command/locks.ts';
import { WorkerProcess } from '../jobs/worker-process.ts';
import { Database } from './client.ts';

/** Runs a constant statement with `$1` parameters. */
export type KeptAsk = <Row extends object>(text: string, parameters?: readonly unknown[]) => Promise<Row[]>;

/**
 * Writes results that are kept beside the records. Nobody decides them and they can be worked out again at any time, so they are no
 * command; records themselves are out of reach here by what the triggers refuse.
 */
@Injectable()
export class KeptResults {
  constructor(@Inject(Database) private readonly database: Database) {}

  /** A process of its own for results over everything; it answers through `answerFromDatabase`. */
  worker<Input, Output>(
    file: { readonly name: string; readonly beside: string },
    options: { readonly megabytes: number },
  ): WorkerProcess<Input, Output> {
    return new WorkerProcess(file, { ...options, url: this.database.serverUrl });
  }

  /**
   * One transaction under a lock by name. Whoever waited for the lock reads after it, so that of two who work out the same result the
   * later one to write is also the later one to have read.
   */
  async transaction<T>(lock: string, work: (ask: KeptAsk) => Promise<T>): Promise<T> {
    const client = await this.database.pool.connect();
    try {
      await client.query('BEGIN');
      await client.query('SELECT pg_advisory_xact_lock($1::bigint)', [String(lockKey(lock))]);
      const result = await work(
        async <Row extends object>(text: string, parameters: readonly unknown[] = []) =>
          (await client.query<Row>(text, [...parameters])).rows,
      );
      await client.query('COMMIT');
      return result;
    } catch (error) {
      await client.query('ROLLBACK').catch(() => undefined);
      throw error;
    } finally {
      client.release();
    }
  }
}
