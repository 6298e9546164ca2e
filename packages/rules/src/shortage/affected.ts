import type { Alternate } from './cover-input.ts';

/**
 * Parts whose cover may differ once something about `changed` did: they themselves and all that are linked to them by alternates, in
 * either direction and over any number of links. Supply and demand of other parts never meet theirs, so `cover` may be asked for
 * these alone and its answer put in place of the old one. Give the alternates as they are and as they were.
 *
 * @example affectedParts(['A'], [{ part: 'A', use: 'B' }, { part: 'C', use: 'B' }]) // A, B and C
 */
export function affectedParts(changed: Iterable<string>, alternates: readonly Alternate[]): Set<string> {
  const linked = new Map<string, string[]>();
  const link = (from: string, to: string) => {
    const known = linked.get(from);
    if (known) known.push(to);
    else linked.set(from, [to]);
  };
  for (const { part, use } of alternates) {
    link(part, use);
    link(use, part);
  }
  const affected = new Set(changed);
  // A set is visited in the order it grows.
  for (const part of affected) for (const other of linked.get(part) ?? []) affected.add(other);
  return affected;
}
