/**
 * A step as it lies on a traveler. Steps go in the order of `sequence`. Neighbours that name a `branch` are a block: the branches
 * of a block go on beside each other, each in its own order; a step without a branch waits for all before it.
 */
export interface LaidStep {
  readonly id: string;
  readonly sequence: number;
  readonly branch: string | null;
  readonly state: 'open' | 'signed' | 'failed' | 'not-needed';
  /** Of a step with time that needs no hands (cure, bake): the instant before which nothing behind it starts. ISO with Z. */
  readonly waitUntil: string | null;
}

/** Where an open step stands: `before` are the open steps that come first, `waitsUntil` the end of the wait of what is done. */
export interface Standing {
  readonly id: string;
  readonly before: readonly string[];
  readonly waitsUntil: string | null;
}

/**
 * Where every open step stands, in order. It can be done when nothing comes before it and its wait is over. Two instants are
 * compared as text, so all are written alike.
 *
 * @example two branches side by side
 * standingOf([step('a', 'inside'), step('b', 'outside')]) // nothing comes before either
 */
export function standingOf(steps: readonly LaidStep[]): Standing[] {
  const inOrder = [...steps].sort((one, other) => one.sequence - other.sequence);
  const blocks = blocksOf(inOrder);
  return inOrder.flatMap((step, index) => {
    if (step.state !== 'open') return [];
    const first = inOrder.filter((other, at) => at < index && comesFirst(other, step, blocks));
    const waits = first.flatMap(({ waitUntil }) => (waitUntil === null ? [] : [waitUntil])).sort();
    return [
      {
        id: step.id,
        before: first.filter(({ state }) => state === 'open').map(({ id }) => id),
        waitsUntil: waits.at(-1) ?? null,
      },
    ];
  });
}

function comesFirst(earlier: LaidStep, step: LaidStep, blocks: ReadonlyMap<string, number>): boolean {
  if (step.branch === null || earlier.branch === null || step.branch === earlier.branch) return true;
  return blocks.get(earlier.id) !== blocks.get(step.id);
}

/** Steps of one block share a number: how many steps without a branch lie before them. */
function blocksOf(inOrder: readonly LaidStep[]): ReadonlyMap<string, number> {
  let joints = 0;
  return new Map(
    inOrder.map((step) => {
      if (step.branch === null) joints += 1;
      return [step.id, joints];
    }),
  );
}
