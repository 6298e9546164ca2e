import type { LiveEvent } from './live-feed.ts';

/**
 * One dashboard's events, each once and in order. What is written while the catch-up is being read comes by both ways, so
 * live events wait for the catch-up and those it already told are dropped.
 */
export class InOrder {
  private readonly held: LiveEvent[] = [];
  private last: LiveEvent | undefined;
  private readonly send: (event: LiveEvent) => void;
  private catchingUp: boolean;

  constructor(send: (event: LiveEvent) => void, catchingUp: boolean) {
    this.send = send;
    this.catchingUp = catchingUp;
  }

  live(event: LiveEvent): void {
    if (this.catchingUp) this.held.push(event);
    else this.once(event);
  }

  caughtUp(missed: readonly LiveEvent[]): void {
    this.catchingUp = false;
    for (const event of [...missed, ...this.held.splice(0)]) this.once(event);
  }

  private once(event: LiveEvent): void {
    if (this.last && !isLater(event, this.last)) return;
    this.last = event;
    this.send(event);
  }
}

/** Whether an event stands after another in the stream. */
function isLater(event: LiveEvent, than: LiveEvent): boolean {
  const [transaction = 0n, row = 0n] = event.id.split('-').map(BigInt);
  const [thanTransaction = 0n, thanRow = 0n] = than.id.split('-').map(BigInt);
  return transaction === thanTransaction ? row > thanRow : transaction > thanTransaction;
}
