/** What is decided at a node of the search, and what nothing below it exceeds. */
export interface SearchNode {
  readonly fixed: Int8Array;
  readonly bound: number;
}

/** Nodes still to look at; the one with the highest bound comes first. */
export class OpenNodes {
  private readonly heap: SearchNode[] = [];

  get highest(): number {
    return this.heap[0]?.bound ?? Number.NEGATIVE_INFINITY;
  }

  add(node: SearchNode): void {
    const { heap } = this;
    let at = heap.push(node) - 1;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (heap[above]!.bound >= node.bound) break;
      heap[at] = heap[above]!;
      at = above;
    }
    heap[at] = node;
  }

  take(): SearchNode | undefined {
    const { heap } = this;
    const first = heap[0];
    const last = heap.pop();
    if (!first || !last || heap.length === 0) return first;
    let at = 0;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= heap.length) break;
      if (below + 1 < heap.length && heap[below + 1]!.bound > heap[below]!.bound) below += 1;
      if (heap[below]!.bound <= last.bound) break;
      heap[at] = heap[below]!;
      at = below;
    }
    heap[at] = last;
    return first;
  }
}
