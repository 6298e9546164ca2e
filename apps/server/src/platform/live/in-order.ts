import type { LiveEvent } from './live-feed.ts';

/**
 * One dashboard's events, each once and in order. What is written while the catch-up is being read comes by both ways, so
 * live events wait for the catch-up and those it already told are dropped.
 */
export class InOrder {
  private readonly held: LiveEvent[] = [];
  private last: Pick<LiveEvent, 'id'> | undefined;
  private readonly send: (event: LiveEvent) => void;
  private readonly seen: string | undefined;
  private catchingUp: boolean;

  /** @param seen the last event this dashboard was told before it went away; without one there is nothing to catch up on. */
  constructor(send: (event: LiveEvent) => void, seen?: string) {
    this.send = send;
    this.seen = seen;
    this.catchingUp = seen !== undefined;
  }

  live(event: LiveEvent): void {
    if (this.catchingUp) this.held.push(event);
    else this.once(event);
  }

  /** @param missed what stands after the last event seen; undefined when that is no longer kept. */
  caughtUp(missed: readonly LiveEvent[] | undefined): void {
    this.catchingUp = false;
    // However late the feed itself comes to what was seen before, it is not told again.
    if (missed && this.seen !== undefined) this.last = { id: this.seen };
    for (const event of [...(missed ?? []), ...this.held.splice(0)]) this.once(event);
  }

  private once(event: LiveEvent): void {
    if (this.last && !isLater(event, this.last)) return;
    this.last = event;
    this.send(event);
  }
}

/** Whether an event stands after another in the stream. */
function isLater(event: LiveEvent, than: Pick<LiveEvent, 'id'>): boolean {
  const [transaction = 0n, row = 0n] = event.id.split('-').map(BigInt);
  const [thanTransaction = 0n, thanRow = 0n] = than.id.split('-').map(BigInt);
  return transaction === thanTransaction ? row > thanRow : transaction > thanTransaction;
}
