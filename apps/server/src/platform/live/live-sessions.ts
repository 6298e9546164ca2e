import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../database/reads.ts';

/** Whether the session behind an open stream still stands: kept, not locked, not over its time, its person's account on. */
@Injectable()
export class LiveSessions {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  /** True also when the database does not answer: the next beat asks again. */
  async stands(sessionId: string): Promise<boolean> {
    try {
      const rows = await this.reads.sql<{ one: number }>(
        `SELECT 1 AS one FROM session s JOIN people p ON p.id::text = s.sess ->> 'personId' AND p.active
         WHERE s.sid = $1 AND s.expire > now() AND s.sess ->> 'lockedAt' IS NULL
           AND coalesce((s.sess ->> 'endsAt')::float8, 'Infinity') > extract(epoch FROM now()) * 1000`,
        [sessionId],
      );
      return rows.length > 0;
    } catch {
      return true;
    }
  }
}
