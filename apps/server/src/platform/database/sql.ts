import { Prisma } from './generated/client.ts';

/** A piece of SQL with its parameters, to put into a raw statement of a transaction. */
export type Sql = Prisma.Sql;
export const { sql } = Prisma;
/** Empties a column of JSON: `null` would be a value in it. */
export const noJson = Prisma.DbNull;
