/** Pieces asked for, and the lots that may serve them, best first. */
export interface Ask {
  readonly id: string;
  readonly quantity: number;
  readonly from: readonly string[];
}

export interface Pick {
  readonly ask: string;
  readonly lot: string;
  readonly quantity: number;
}

export interface HandedOut {
  readonly picks: Pick[];
  /** What no way of handing out can give, by ask. */
  readonly unmet: { readonly ask: string; readonly quantity: number }[];
  /** Where something is unmet: lots that are asked for more pieces than they have, however they are handed out. */
  readonly scarce: readonly string[];
}

/** Asks that may draw on the same lots in the same order are one. */
interface Kind {
  readonly from: readonly string[];
  readonly asks: Ask[];
  want: number;
  readonly got: Map<string, number>;
}

/**
 * Hands lots out to asks so that as much as possible is met: each ask takes its best lots first, and where that leaves one unmet, pieces
 * are exchanged along augmenting paths. Source: maximum flow by shortest augmenting paths (Edmonds & Karp 1972); the lots that prove
 * it impossible are the neighbours in a minimum cut, which is Hall's condition (Hall 1935).
 *
 * @example one seal of lot A; X takes A or B (one of B left), Y takes A only → X gets B, Y gets A
 */
export function handOut(asks: readonly Ask[], lots: ReadonlyMap<string, number>): HandedOut {
  const left = new Map(lots);
  const kinds = kindsOf(asks);
  for (const kind of kinds) takeBest(kind, left);
  const takers = takersOf(kinds);
  for (const kind of kinds) while (kind.want > 0 && exchange(kind, takers, left));
  const unmetKinds = kinds.filter(({ want }) => want > 0);
  const scarce = unmetKinds.length === 0 ? [] : [...reach(unmetKinds, takers, left).lots.keys()].sort();
  return { ...shared(kinds), scarce };
}

function kindsOf(asks: readonly Ask[]): Kind[] {
  const kinds = new Map<string, Kind>();
  for (const ask of asks) {
    const key = ask.from.join('\n');
    const kind: Kind = kinds.get(key) ?? { from: ask.from, asks: [], want: 0, got: new Map() };
    kind.asks.push(ask);
    kind.want += ask.quantity;
    kinds.set(key, kind);
  }
  return [...kinds.values()];
}

function takeBest(kind: Kind, left: Map<string, number>): void {
  for (const lot of kind.from) {
    const quantity = Math.min(kind.want, left.get(lot) ?? 0);
    if (quantity > 0) give(kind, lot, { quantity, left });
  }
}

function give(kind: Kind, lot: string, { quantity, left }: { quantity: number; left: Map<string, number> }): void {
  kind.got.set(lot, (kind.got.get(lot) ?? 0) + quantity);
  kind.want -= quantity;
  left.set(lot, (left.get(lot) ?? 0) - quantity);
}

/** Of each lot the kinds that may draw on it. */
function takersOf(kinds: readonly Kind[]): Map<string, Kind[]> {
  const takers = new Map<string, Kind[]>();
  for (const kind of kinds)
    for (const lot of kind.from) {
      const known = takers.get(lot);
      if (known) known.push(kind);
      else takers.set(lot, [kind]);
    }
  return takers;
}

interface Reached {
  /** From which kind each lot was reached, and through which lot each kind. */
  readonly lots: Map<string, Kind>;
  readonly through: Map<Kind, string>;
  readonly free: string | undefined;
}

/** Everything that pieces could be exchanged with, up to the first lot that has some left. */
function reach(
  start: readonly Kind[],
  takers: ReadonlyMap<string, Kind[]>,
  left: ReadonlyMap<string, number>,
): Reached {
  const lots = new Map<string, Kind>();
  const through = new Map<Kind, string>();
  const queue = [...start];
  const seen = new Set(queue);
  for (const kind of queue)
    for (const lot of kind.from) {
      if (lots.has(lot)) continue;
      lots.set(lot, kind);
      if ((left.get(lot) ?? 0) > 0) return { lots, through, free: lot };
      for (const taker of takers.get(lot) ?? []) {
        if (seen.has(taker) || !((taker.got.get(lot) ?? 0) > 0)) continue;
        seen.add(taker);
        through.set(taker, lot);
        queue.push(taker);
      }
    }
  return { lots, through, free: undefined };
}

/** One exchange along a shortest path; false when nothing more can be met. */
function exchange(kind: Kind, takers: ReadonlyMap<string, Kind[]>, left: Map<string, number>): boolean {
  const { lots, through, free } = reach([kind], takers, left);
  if (free === undefined) return false;
  const steps: { taker: Kind; takes: string; givesUp: string | undefined }[] = [];
  for (let lot: string | undefined = free; lot !== undefined; ) {
    const taker: Kind = lots.get(lot) as Kind;
    const givesUp = through.get(taker);
    steps.push({ taker, takes: lot, givesUp });
    lot = givesUp;
  }
  const given = steps.map(({ taker, givesUp }) => (givesUp === undefined ? kind.want : (taker.got.get(givesUp) ?? 0)));
  const quantity = Math.min(left.get(free) ?? 0, ...given);
  for (const { taker, takes, givesUp } of steps) {
    taker.got.set(takes, (taker.got.get(takes) ?? 0) + quantity);
    if (givesUp !== undefined) taker.got.set(givesUp, (taker.got.get(givesUp) ?? 0) - quantity);
  }
  kind.want -= quantity;
  left.set(free, (left.get(free) ?? 0) - quantity);
  return true;
}

/** What each kind got, to its asks in the order they were given. */
function shared(kinds: readonly Kind[]): Omit<HandedOut, 'scarce'> {
  const picks: Pick[] = [];
  const unmet: { ask: string; quantity: number }[] = [];
  for (const { from, asks, got } of kinds) {
    const rest = new Map(got);
    for (const ask of asks) {
      let wanting = ask.quantity;
      for (const lot of from) {
        const quantity = Math.min(wanting, rest.get(lot) ?? 0);
        if (quantity === 0) continue;
        picks.push({ ask: ask.id, lot, quantity });
        rest.set(lot, (rest.get(lot) ?? 0) - quantity);
        wanting -= quantity;
      }
      if (wanting > 0) unmet.push({ ask: ask.id, quantity: wanting });
    }
  }
  return { picks, unmet };
}
