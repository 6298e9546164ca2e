/**
 * Parts that may draw on each other's supply, directly or through a shared alternate. Demands of different groups never
 * meet, so each group is sorted and served alone: short sorts, and one group can be worked out again without the rest.
 */
export class CompetingParts {
  private readonly indexOf = new Map<string, number>();
  private readonly parent: number[] = [];

  constructor(alternates: { part: string; use: string }[]) {
    for (const { part, use } of alternates) {
      const a = this.root(this.index(part));
      const b = this.root(this.index(use));
      if (a !== b) this.parent[a] = b;
    }
  }

  groupOf(part: string): number {
    return this.root(this.index(part));
  }

  /** Group numbers are below this. */
  get size(): number {
    return this.parent.length;
  }

  private index(part: string): number {
    const known = this.indexOf.get(part);
    if (known !== undefined) return known;
    const index = this.parent.length;
    this.indexOf.set(part, index);
    this.parent.push(index);
    return index;
  }

  private root(index: number): number {
    let root = index;
    while (this.parent[root] !== root) {
      this.parent[root] = this.parent[this.parent[root]!]!;
      root = this.parent[root]!;
    }
    return root;
  }
}
