/** A step as a revision writes it. */
export interface RoutedStep {
  readonly title: string;
  readonly phase: 'evaluation' | 'repair' | 'build' | 'final';
  readonly branch: string | null;
}

/** What is wrong with a step, by its index. */
export interface RouteFault {
  readonly step: number;
  readonly field: 'title' | 'phase' | 'branch';
  readonly detail: string;
}

const phases: readonly RoutedStep['phase'][] = ['evaluation', 'repair', 'build', 'final'];

/**
 * What nobody could work by: a phase that comes back, a branch with nothing beside it, a block over two phases (the customer's
 * answer lies between them), two steps of one title (revisions are compared by title). Empty for a good route.
 */
export function routeFaults(steps: readonly RoutedStep[]): RouteFault[] {
  return [...phaseFaults(steps), ...titleFaults(steps), ...branchFaults(steps)].sort((a, b) => a.step - b.step);
}

function phaseFaults(steps: readonly RoutedStep[]): RouteFault[] {
  let furthest = 0;
  return steps.flatMap(({ phase }, step) => {
    const at = phases.indexOf(phase);
    if (at < furthest)
      return [{ step, field: 'phase' as const, detail: `The ${phase} phase is over before this step` }];
    furthest = at;
    return [];
  });
}

function titleFaults(steps: readonly RoutedStep[]): RouteFault[] {
  const titles = steps.map(({ title }) => title.toLowerCase());
  return titles.flatMap((title, step) =>
    titles.indexOf(title) === step
      ? []
      : [{ step, field: 'title' as const, detail: 'Another step of this route has this title' }],
  );
}

function branchFaults(steps: readonly RoutedStep[]): RouteFault[] {
  return blocks(steps).flatMap((block) => {
    const [first = 0] = block;
    const names = new Set(block.map((step) => steps[step]?.branch));
    if (names.size < 2)
      return [{ step: first, field: 'branch' as const, detail: 'A branch goes on beside another; this one is alone' }];
    const split = block.find((step) => steps[step]?.phase !== steps[first]?.phase);
    return split === undefined
      ? []
      : [{ step: split, field: 'branch' as const, detail: 'Branches side by side belong to one phase' }];
  });
}

/** Indexes of neighbours that name a branch. */
function blocks(steps: readonly RoutedStep[]): number[][] {
  const found: number[][] = [];
  for (const [step, { branch }] of steps.entries()) {
    if (branch === null) continue;
    const last = found.at(-1);
    if (last?.at(-1) === step - 1) last.push(step);
    else found.push([step]);
  }
  return found;
}
