import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import { type Prisma, PrismaClient } from './generated/client.ts';

/** An open transaction: all a command body may write through. */
export type Tx = Prisma.TransactionClient;

/** The server's connections: Prisma for commands, a plain pool for hot reads. Only platform may inject this. */
export class Database {
  readonly prisma: PrismaClient;
  readonly pool: pg.Pool;

  /** @param url connection string of the server's own role, which does not own the tables */
  constructor(readonly url: string) {
    const connection = serverConnection(url);
    this.prisma = new PrismaClient({
      adapter: new PrismaPg({ ...connection, max: 12 }),
      errorFormat: 'minimal',
      transactionOptions: { maxWait: 10_000, timeout: 20_000 },
    });
    this.pool = new pg.Pool({ ...connection, max: 8 });
    // An idle connection may die with the database; the next query opens a new one.
    this.pool.on('error', () => undefined);
  }

  async close(): Promise<void> {
    await Promise.allSettled([this.prisma.$disconnect(), this.pool.end()]);
  }
}

/** Connects under the role that may not change records, unless a connection string of its own was given. */
export function serverConnection(url: string): { connectionString: string; options?: string } {
  return process.env.DATABASE_SERVER_URL
    ? { connectionString: process.env.DATABASE_SERVER_URL }
    : { connectionString: url, options: '-c role=hubwright_server' };
}
