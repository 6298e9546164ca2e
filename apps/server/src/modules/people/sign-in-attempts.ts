import { Problem } from '@hubwright/contracts/problems';
import { Inject, Injectable } from '@nestjs/common';
import { RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible';
import { Database } from '../../platform/database/client.ts';

const quarterOfAnHour = 15 * 60;

/** Counts wrong passwords: ten lock the account, and ten from one address lock the address, for 15 minutes. */
@Injectable()
export class SignInAttempts {
  private readonly limiter: RateLimiterPostgres;

  constructor(@Inject(Database) database: Database) {
    this.limiter = new RateLimiterPostgres({
      storeClient: database.pool,
      tableName: 'sign_in_attempts',
      tableCreated: true,
      clearExpiredByTimeout: false,
      keyPrefix: '',
      points: 10,
      duration: quarterOfAnHour,
      blockDuration: quarterOfAnHour,
    });
  }

  /** Counts before the password is looked at, so that parallel guesses cannot slip past. Throws `sign-in-locked`. */
  async count(signInName: string, address?: string): Promise<void> {
    await this.consume(accountKey(signInName));
    if (address) await this.consume(addressKey(address));
  }

  /** After a right password the account starts anew, and the address gets its try back. */
  async forget(signInName: string, address?: string): Promise<void> {
    await this.limiter.delete(accountKey(signInName));
    if (address) await this.limiter.reward(addressKey(address), 1);
  }

  /** A supervisor's unlock. */
  async unlock(signInName: string, address?: string): Promise<void> {
    await this.limiter.delete(accountKey(signInName));
    if (address) await this.limiter.delete(addressKey(address));
  }

  private async consume(key: string): Promise<void> {
    try {
      await this.limiter.consume(key);
    } catch (rejected) {
      if (!(rejected instanceof RateLimiterRes)) throw rejected;
      throw new Problem('sign-in-locked', 'Too many wrong passwords', {
        retryAfterSeconds: Math.ceil(rejected.msBeforeNext / 1000),
      });
    }
  }
}

function accountKey(signInName: string): string {
  return `account:${signInName.toLowerCase().slice(0, 80)}`;
}

function addressKey(address: string): string {
  return `address:${address}`;
}
