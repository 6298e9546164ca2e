import type { Alternate } from './cover-input.ts';

/**
 * Parts by number, and which of them may draw on each other's supply, directly or through a shared alternate. Demands of
 * different groups never meet, so each group is sorted and served alone.
 */
export class CompetingParts {
  private readonly numberOf = new Map<string, number>();
  private readonly parent: number[] = [];
  private readonly uses = new Map<number, number[]>();

  constructor(alternates: Alternate[]) {
    for (const alternate of alternates) {
      const part = this.number(alternate.part);
      const use = this.number(alternate.use);
      this.uses.set(part, [...(this.uses.get(part) ?? []), use]);
      this.parent[this.group(part)] = this.group(use);
    }
  }

  number(part: string): number {
    const known = this.numberOf.get(part);
    if (known !== undefined) return known;
    const number = this.parent.length;
    this.numberOf.set(part, number);
    this.parent.push(number);
    return number;
  }

  /** Part numbers and group numbers are below this. */
  get size(): number {
    return this.parent.length;
  }

  group(part: number): number {
    let root = part;
    while (this.parent[root] !== root) {
      this.parent[root] = this.parent[this.parent[root]!]!;
      root = this.parent[root]!;
    }
    return root;
  }

  /** The part itself, then what may stand in for it, in order of preference. */
  servedFrom(part: number): number[] {
    return [part, ...(this.uses.get(part) ?? [])];
  }
}
