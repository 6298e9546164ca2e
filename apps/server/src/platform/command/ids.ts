import { v7 } from 'uuid';

/** Makes ids. The seed brings its own so that the same seed gives the same data. */
export interface Ids {
  next(): string;
}
export const IDS = Symbol('Ids');

export const systemIds: Ids = { next: () => v7() };
