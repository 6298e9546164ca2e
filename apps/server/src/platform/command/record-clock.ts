import { Problem } from '@hubwright/contracts/problems';
import { Inject, Injectable } from '@nestjs/common';
import { Database } from '../database/client.ts';
import { CLOCK, type Clock } from './clock.ts';

/** Clocks of one network differ by seconds; two minutes are a clock that was set back. Chosen here, by no standard. */
const toleratedMilliseconds = 2 * 60 * 1000;

/** Whether the newest entry is to be forgotten once, after a clock that ran ahead was set right. */
export const CLOCK_SET_BACK = Symbol('ClockSetBack');

/** Compares the server's clock with its own records: what is signed now must not be dated before what was signed already. */
@Injectable()
export class RecordClock {
  /** When the newest entry was written, in milliseconds; read once, then kept up by what this process writes. */
  private newest: number | undefined;

  constructor(
    @Inject(Database) private readonly database: Database,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(CLOCK_SET_BACK) private readonly setBack: boolean,
  ) {}

  /** Throws `clock-behind` while the clock is more than two minutes behind the newest entry. */
  async check(): Promise<void> {
    const newest = await this.newestEntry();
    const now = this.clock.now().getTime();
    if (newest - now <= toleratedMilliseconds) return;
    throw new Problem('clock-behind', 'The clock is behind the newest record entry', {
      clock: new Date(now).toISOString(),
      newestEntry: new Date(newest).toISOString(),
    });
  }

  /** An entry was written at this moment. */
  wrote(at: Date): void {
    if (this.newest !== undefined) this.newest = Math.max(this.newest, at.getTime());
  }

  private async newestEntry(): Promise<number> {
    this.newest ??= this.setBack ? this.clock.now().getTime() : await this.newestKept();
    return this.newest;
  }

  private async newestKept(): Promise<number> {
    const { rows } = await this.database.pool.query<{ at: Date | null }>('SELECT max(at) AS at FROM record_entries');
    return rows[0]?.at?.getTime() ?? 0;
  }
}
