import type { SeedRun } from './run.ts';

interface Event {
  readonly day: number;
  readonly hour: number;
  readonly what: () => Promise<unknown>;
}

/** What happens in the shop, put in order of time however it was written down. */
export class Calendar {
  private readonly events: Event[] = [];

  /** @param day counted from today; @param hour in UTC, 13 to 22 is a working day in the shop */
  on(day: number, hour: number, what: () => Promise<unknown>): void {
    this.events.push({ day, hour, what });
  }

  /** Plays everything up to yesterday evening, also what is put down while playing: nothing may lie after a real now. */
  async play(run: SeedRun): Promise<void> {
    for (let event = this.earliest(); event; event = this.earliest()) {
      run.at(event.day, event.hour);
      await event.what();
    }
  }

  private earliest(): Event | undefined {
    const due = this.events.filter(({ day }) => day < 0);
    const [first] = due.sort((a, b) => a.day - b.day || a.hour - b.hour);
    if (first) this.events.splice(this.events.indexOf(first), 1);
    return first;
  }
}
