import { Problem } from '@hubwright/contracts/problems';

/** How many files may be on their way at once: memory, disk and the one who draws pictures are shared. */
export class UploadSlots {
  private readonly taken = new Map<string, number>();
  private all = 0;

  constructor(
    private readonly most: number,
    private readonly mostOfOne: number,
  ) {}

  /** Throws `busy` when there is no room; answers how to leave. */
  enter(personId: string): () => void {
    const own = this.taken.get(personId) ?? 0;
    if (this.all >= this.most || own >= this.mostOfOne)
      throw new Problem('busy', `${this.all} files are being received; ${own} of them are yours`);
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
