import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../command/clock.ts';
import { Database } from '../database/client.ts';

/** Remembers which one-time codes were used, in one statement each, so that two requests cannot both use one. */
@Injectable()
export class OneTimeCodes {
  constructor(
    @Inject(Database) private readonly database: Database,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** False when this time step, or a later one, was used before (RFC 6238 §5.2). */
  async spendStep(personId: string, step: number): Promise<boolean> {
    const where = { personId, lastStep: { lt: step } };
    const { count } = await this.database.prisma.secondFactor.updateMany({ where, data: { lastStep: step } });
    return count === 1;
  }

  /** False when the person has no such code, or used it. */
  async spendRecoveryCode(personId: string, hash: string): Promise<boolean> {
    const where = { personId, hash, usedAt: null };
    const { count } = await this.database.prisma.recoveryCode.updateMany({
      where,
      data: { usedAt: this.clock.now() },
    });
    return count === 1;
  }
}
