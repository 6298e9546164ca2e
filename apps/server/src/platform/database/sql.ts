import { Prisma } from './generated/client.ts';

/** A piece of SQL with its parameters, to put into a raw statement of a transaction. */
export type Sql = Prisma.Sql;
export const { sql } = Prisma;
