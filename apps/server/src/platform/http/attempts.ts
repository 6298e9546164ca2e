import { Problem } from '@hubwright/contracts/problems';
import { Inject, Injectable } from '@nestjs/common';
import { RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible';
import { Database } from '../database/client.ts';

const quarterOfAnHour = 15 * 60;

/** Counts tries at secrets in the database, for all server processes: ten within 15 minutes lock the key for 15 minutes. */
@Injectable()
export class Attempts {
  private readonly limiter: RateLimiterPostgres;
  private readonly pins: RateLimiterPostgres;

  constructor(@Inject(Database) database: Database) {
    const table = {
      storeClient: database.pool,
      tableName: 'sign_in_attempts',
      tableCreated: true,
      clearExpiredByTimeout: false,
      keyPrefix: '',
    };
    this.limiter = new RateLimiterPostgres({
      ...table,
      points: 10,
      duration: quarterOfAnHour,
      blockDuration: quarterOfAnHour,
    });
    // No duration: time does not free a locked PIN, only a full sign-in does.
    this.pins = new RateLimiterPostgres({ ...table, points: 5, duration: 0 });
  }

  /** Counts one try at a PIN. Throws `pin-locked` after five wrong ones, until `forget`. */
  async countPin(key: string): Promise<void> {
    try {
      await this.pins.consume(key);
    } catch (rejected) {
      if (!(rejected instanceof RateLimiterRes)) throw rejected;
      throw new Problem('pin-locked', 'Five wrong PINs were entered');
    }
  }

  /** Counts one try. Throws `sign-in-locked` with the seconds to wait and what is locked. */
  async count(key: string, locked: { account: true } | { address: string }): Promise<void> {
    try {
      await this.limiter.consume(key);
    } catch (rejected) {
      if (!(rejected instanceof RateLimiterRes)) throw rejected;
      const place = 'address' in locked ? ` from the address ${locked.address}` : '';
      throw new Problem('sign-in-locked', `Too many wrong passwords${place}`, {
        retryAfterSeconds: Math.ceil(rejected.msBeforeNext / 1000),
        ...('address' in locked ? { lockedAddress: locked.address } : {}),
      });
    }
  }

  /** Starts the key anew, a PIN's too. */
  async forget(key: string): Promise<void> {
    await this.limiter.delete(key);
  }

  /** Gives one try back. */
  async giveBack(key: string): Promise<void> {
    await this.limiter.reward(key, 1);
  }
}
