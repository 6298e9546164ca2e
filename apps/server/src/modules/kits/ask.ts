import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';

/** Runs one of this department's constant queries with `$1` parameters, inside a command's transaction or for a view. */
export type Ask = <Row extends object>(text: string, parameters: readonly unknown[]) => Promise<Row[]>;

export function askIn(tx: Tx): Ask {
  return (text, parameters) => tx.$queryRawUnsafe(text, ...parameters);
}

export function askThrough(reads: Reads): Ask {
  return (text, parameters) => reads.sql(text, parameters);
}
