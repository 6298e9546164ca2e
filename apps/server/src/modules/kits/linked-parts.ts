import type { Alternate } from '@hubwright/rules/shortage';
import type { Ask } from './ask.ts';

/** Every pair of parts of which one may stand in for the other, in whatever direction and until when: who may meet whom. */
export function allLinks(ask: Ask): Promise<Alternate[]> {
  return ask<Alternate>('SELECT part_id AS part, use_id AS use FROM part_alternates', []);
}
