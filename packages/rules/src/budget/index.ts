/** How long a search may take. The caller passes the clock, so rules read none; without a budget a search runs to its proven end. */
export type Budget = { ms: number; now: () => number };
