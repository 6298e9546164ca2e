/** Gathers nouns that became stale within a short while, so that a burst of events reads each view once. */
export class StaleNouns {
  private readonly waiting = new Set<string>();
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly refresh: (nouns: string[]) => void,
    private readonly waitMs = 150,
  ) {}

  add(nouns: readonly string[]): void {
    for (const noun of nouns) this.waiting.add(noun);
    this.timer ??= setTimeout(() => this.flush(), this.waitMs);
  }

  flush(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    const nouns = [...this.waiting];
    this.waiting.clear();
    if (nouns.length > 0) this.refresh(nouns);
  }
}
