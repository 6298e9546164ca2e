import type { Choice } from './improve.ts';
import { eachNeed, type Model, putBack, take } from './model.ts';
import { type Group, separate } from './separate.ts';

/** Kits set free at once: few enough for a small search, enough to exchange several for several. */
const SET_FREE = 32;

/**
 * Part of a choice opened up again: one kit with those that compete with it most, over what is on the shelf once they are given back. `sure` are
 * kits that then fit whatever happens; each group is a small question of its own. The same `turn` gives the same kits.
 */
export function neighbourhood(
  model: Model,
  choice: Choice,
  turn: number,
): { free: Set<number>; groups: Group[]; sure: number[] } {
  const free = competing(model, turn);
  const left = Float64Array.from(model.capacity);
  for (const kit of model.rows.keys()) if (choice.isIn[kit]) take(model, kit, left);
  for (const kit of free) if (choice.isIn[kit]) putBack(model, kit, left);
  const kits = [...free];
  const opened = separate({
    values: Float64Array.from(kits, (kit) => model.values[kit]!),
    rows: kits.map((kit) => model.rows[kit]!),
    needs: kits.map((kit) => model.needs[kit]!),
    capacity: left,
  });
  return {
    free,
    sure: opened.sure.map((at) => kits[at]!),
    groups: opened.groups.map((group) => ({ ...group, kits: group.kits.map((at) => kits[at]!) })),
  };
}

/** One kit and those that want most of the same parts, a little shuffled so that no two turns are alike. */
function competing(model: Model, turn: number): Set<number> {
  const chance = sequence(turn + 1);
  const first = Math.floor(chance() * model.values.length);
  const wanted = new Map<number, number>();
  eachNeed(model, first, (row, pieces) => {
    wanted.set(row, pieces / Math.max(1, model.capacity[row]!));
  });
  const rivalry = model.rows.map((rows) => {
    const shared = rows.reduce((sum, row) => sum + (wanted.get(row) ?? 0), 0);
    return shared * (0.5 + chance());
  });
  const order = [...rivalry.keys()].sort((a, b) => rivalry[b]! - rivalry[a]!);
  return new Set([first, ...order.slice(0, SET_FREE)]);
}

/** Park and Miller's generator (Communications of the ACM 31, 1988): the same for the same seed. */
function sequence(seed: number): () => number {
  let state = (seed * 7919) % 2147483647 || 1;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
