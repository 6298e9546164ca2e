import { randomBytes } from 'node:crypto';
import { v7 } from 'uuid';

/** Makes ids. The seed brings its own so that the same seed gives the same data. */
export interface Ids {
  next(): string;
  /** 32 hex digits that nobody can guess, for salts. */
  secret(): string;
}
export const IDS = Symbol('Ids');

export const systemIds: Ids = { next: () => v7(), secret: () => randomBytes(16).toString('hex') };
