import { Problem } from '@hubwright/contracts/problems';

/** How many costly things may go on at once, in all and for one person: memory, disk and processor are shared. */
export class Slots {
  private readonly taken = new Map<string, number>();
  private all = 0;

  constructor(
    private readonly most: number,
    private readonly mostOfOne: number,
    /** What goes on, for the sentence that says why not: “files are being received”. */
    private readonly goingOn: string,
  ) {}

  /** Throws `busy` when there is no room; answers how to leave. */
  enter(personId: string): () => void {
    const own = this.taken.get(personId) ?? 0;
    if (this.all >= this.most || own >= this.mostOfOne)
      throw new Problem('busy', `${this.all} ${this.goingOn}; ${own} of them are yours`);
    this.all += 1;
    this.taken.set(personId, own + 1);
    return () => this.leave(personId);
  }

  private leave(personId: string): void {
    this.all -= 1;
    const left = (this.taken.get(personId) ?? 1) - 1;
    if (left > 0) this.taken.set(personId, left);
    else this.taken.delete(personId);
  }
}
