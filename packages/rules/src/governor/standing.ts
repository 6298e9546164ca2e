import { RuleError } from '../errors/index.ts';

/** What happened on the bench, in the order it happened. */
export type BenchEvent =
  | { readonly kind: 'reading'; readonly point: string; readonly pass: boolean }
  /** Points that depend on what was adjusted: what they read before says nothing any more. */
  | { readonly kind: 'adjustment'; readonly reopens: readonly string[] };

/** `open`: never taken. `reopened`: taken, but something it depends on was adjusted since. */
export type PointState = 'open' | 'good' | 'out' | 'reopened';

export interface PointStanding {
  readonly point: string;
  readonly state: PointState;
  /** Index of the event whose reading stands; null while none does. */
  readonly reading: number | null;
}

export interface RunStanding {
  readonly points: readonly PointStanding[];
  /** Every point has a standing reading, and every one of them is good. */
  readonly passes: boolean;
  /** Points without a standing reading, in the order of the program. */
  readonly open: readonly string[];
  /** Points whose standing reading is outside its limits. */
  readonly out: readonly string[];
}

/**
 * How a run stands: the newest reading of a point counts, unless something it depends on was adjusted after it. A run passes
 * when every point of its program has a standing reading and each is good: one that is open or out keeps it from passing.
 *
 * Source: common practice, no source. Errors: RuleError `no-points`, `point-twice`, `unknown-point`.
 *
 * Caution: a passed run is no release; the current approved manual and the person licensed to decide do that.
 *
 * @example runStanding(['relief'], [{ kind: 'reading', point: 'relief', pass: true }]).passes // true
 */
export function runStanding(points: readonly string[], events: readonly BenchEvent[]): RunStanding {
  if (points.length === 0) throw new RuleError('no-points', 'A program has at least one point.', 'points');
  const standing = new Map<string, PointStanding>(
    points.map((point) => [point, { point, state: 'open', reading: null }]),
  );
  if (standing.size !== points.length)
    throw new RuleError('point-twice', 'Each point has a name of its own.', 'points');
  const known = (point: string, path: string): PointStanding => {
    const one = standing.get(point);
    if (one) return one;
    throw new RuleError('unknown-point', `The program has no point “${point}”.`, path);
  };
  for (const [index, event] of events.entries()) {
    if (event.kind === 'reading') {
      const { point } = known(event.point, `events[${index}].point`);
      standing.set(point, { point, state: event.pass ? 'good' : 'out', reading: index });
      continue;
    }
    for (const name of event.reopens) {
      const { point, state } = known(name, `events[${index}].reopens`);
      if (state !== 'open') standing.set(point, { point, state: 'reopened', reading: null });
    }
  }
  const all = [...standing.values()];
  const named = (...states: PointState[]) =>
    all.filter(({ state }) => states.includes(state)).map(({ point }) => point);
  const [open, out] = [named('open', 'reopened'), named('out')];
  return { points: all, passes: open.length === 0 && out.length === 0, open, out };
}
