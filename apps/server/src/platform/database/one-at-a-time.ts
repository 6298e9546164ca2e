import pg from 'pg';

/**
 * A connection that sends a query once the one before is answered. Prisma reads the relations of an `include` side by side,
 * inside a transaction too, where there is one connection; pg would queue them itself, but says it will stop doing so.
 */
export class OneAtATime extends pg.Client {
  private last: Promise<unknown> = Promise.resolve();

  // The pool asks with a callback, and then alone; only what answers with a promise can come side by side.
  override query = ((...asked: unknown[]): unknown => {
    const send = super.query.bind(this) as (...args: unknown[]) => unknown;
    if (asked.some((each) => typeof each === 'function')) return send(...asked);
    const answer = this.last.then(() => send(...asked));
    this.last = answer.catch(() => undefined);
    return answer;
  }) as pg.Client['query'];
}
