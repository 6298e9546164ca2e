/** That one part may stand in for another: `use` for `part`, and where it is `twoWay` also `part` for `use`. */
export type StandIn = {
  part: string;
  use: string;
  twoWay: boolean;
  /** `use` has taken the place of `part` for good: what supersedes `use` may then stand in for `part` too. */
  supersedes: boolean;
  /** `until-used`: as long as there is some of `part`, that is used before `use`. */
  effectivity: 'now' | 'from-date' | 'until-used';
  /** First day on which it holds, for `from-date`. */
  from?: string | undefined;
};

export type Usable = {
  /** In the order in which they are taken. */
  parts: string[];
  /** For a part: those of which nothing may be left before it is taken. */
  usedUpFirst: (part: string) => string[];
};

/**
 * Which parts may serve a need for `part` in a build on `day` (undefined: whenever), in the order in which they are taken: the
 * part itself, what stands in for it in the order given, what it may stand in for two ways; but what is to be used up comes
 * before what follows it. Chains are followed through supersession only. Source: common practice, no source.
 *
 * @example usableFor('NEW', [{ part: 'OLD', use: 'NEW', twoWay: true, supersedes: true, effectivity: 'until-used' }], '2026-03-01')
 *   // parts: ['OLD', 'NEW']
 */
export function usableFor(part: string, links: StandIn[], day?: string): Usable {
  const open = links.filter(({ effectivity, from }) => effectivity !== 'from-date' || !day || (from ?? '') <= day);
  const all = [part, ...forward(open, part), ...backward(open, part)];
  const candidates = [...new Set(all)];
  const usedUpFirst = (late: string) =>
    candidates.filter((early) => early !== late && followersOfRemnant(open, early).includes(late));
  return { parts: inOrder(candidates, usedUpFirst), usedUpFirst };
}

function forward(links: StandIn[], part: string): string[] {
  return reached(part, (at, first) =>
    links.filter((link) => link.part === at && (first || link.supersedes)).map((link) => [link.use, link.supersedes]),
  );
}

function backward(links: StandIn[], part: string): string[] {
  return reached(part, (at, first) =>
    links
      .filter((link) => link.use === at && link.twoWay && (first || link.supersedes))
      .map((link) => [link.part, link.supersedes]),
  );
}

/** What comes after a part of which the rest is to be used up. */
function followersOfRemnant(links: StandIn[], part: string): string[] {
  const next = links.filter((link) => link.part === part && link.effectivity === 'until-used');
  return next.flatMap((link) => [link.use, ...(link.supersedes ? chainFrom(links, link.use) : [])]);
}

function chainFrom(links: StandIn[], part: string): string[] {
  return forward(
    links.filter(({ supersedes }) => supersedes),
    part,
  );
}

/** Parts in the order they are met; a way goes on only through supersession. */
function reached(part: string, steps: (at: string, first: boolean) => [string, boolean][]): string[] {
  const met = new Set<string>([part]);
  const order: string[] = [];
  const waiting: [string, boolean][] = [[part, true]];
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    for (const [to, goesOn] of steps(...next)) {
      if (met.has(to)) continue;
      met.add(to);
      order.push(to);
      if (goesOn) waiting.push([to, false]);
    }
  }
  return order;
}

function inOrder(candidates: string[], usedUpFirst: Usable['usedUpFirst']): string[] {
  const placed: string[] = [];
  const seen = new Set<string>();
  const place = (part: string) => {
    if (seen.has(part)) return;
    seen.add(part);
    for (const early of usedUpFirst(part)) place(early);
    placed.push(part);
  };
  for (const part of candidates) place(part);
  return placed;
}
