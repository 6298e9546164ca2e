import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import { type Prisma, PrismaClient } from './generated/client.ts';
import { OneAtATime } from './one-at-a-time.ts';
import { asServer } from './server-role.ts';

/** An open transaction: all a command body may write through. */
export type Tx = Prisma.TransactionClient;

/** The server's connections: Prisma for commands, a plain pool for hot reads. Only platform may inject this. */
export class Database {
  readonly prisma: PrismaClient;
  readonly pool: pg.Pool;
  readonly serverUrl: string;

  /** @param url connection string; the server works under its own role, which does not own the tables */
  constructor(url: string) {
    this.serverUrl = asServer(url);
    const connection = { connectionString: this.serverUrl };
    this.prisma = new PrismaClient({
      adapter: new PrismaPg({ ...connection, max: 12, Client: OneAtATime }),
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
