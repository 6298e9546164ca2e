import { Inject, Injectable } from '@nestjs/common';
import { Database } from './client.ts';
import { eachRow } from './each-row.ts';
import type { PrismaClient } from './generated/client.ts';

type ReadMethod =
  | 'findUnique'
  | 'findUniqueOrThrow'
  | 'findFirst'
  | 'findFirstOrThrow'
  | 'findMany'
  | 'count'
  | 'aggregate'
  | 'groupBy';
type ReadOnly<T> = {
  [K in keyof T as K extends string ? (K extends `$${string}` ? never : K) : never]: T[K] extends { findMany: unknown }
    ? Pick<T[K], Extract<keyof T[K], ReadMethod>>
    : never;
};

/** What `*.queries.ts` files read through. Writing through it is a type error. */
@Injectable()
export class Reads {
  readonly models: ReadOnly<PrismaClient>;

  constructor(@Inject(Database) private readonly database: Database) {
    this.models = database.prisma as unknown as ReadOnly<PrismaClient>;
  }

  /** Typed SQL for hot reads: `$1` parameters only, never text put together. */
  async sql<Row extends object>(text: string, parameters: readonly unknown[] = []): Promise<Row[]> {
    const result = await this.database.pool.query<Row>(text, [...parameters]);
    return result.rows;
  }

  /** The rows of a query of any length, a page at a time, all as of one moment; whoever stops early gives the connection back. */
  async *each<Row extends object>(text: string): AsyncGenerator<Row> {
    const client = await this.database.pool.connect();
    try {
      await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
      yield* eachRow<Row>(client, text);
    } finally {
      await client.query('ROLLBACK').catch(() => undefined);
      client.release();
    }
  }
}
