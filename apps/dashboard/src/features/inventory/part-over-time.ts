import { addDays } from '@hubwright/rules/dates';

/** Pieces promised or needed on a day, pieces due on a day, pieces that may not be used from a day on. */
export interface Dated {
  readonly date: string;
  readonly quantity: number;
}

export interface PartAhead {
  /** Pieces on the shelf today that may be used. */
  readonly have: number;
  readonly promised: readonly Dated[];
  readonly due: readonly Dated[];
  readonly expiring: readonly Dated[];
  readonly short: readonly Dated[];
}

const daysPerColumn = 3;

export interface DayAhead {
  readonly date: string;
  readonly have: number;
  readonly onOrder: number;
  readonly short: number;
}

/** Late deliveries count from today on: they may come any day, not in the past. */
function upTo(date: string, all: readonly Dated[]): number {
  return all.filter((each) => each.date <= date).reduce((sum, each) => sum + each.quantity, 0);
}

/**
 * A part every third day, from today: what is left on the shelf when what is promised has been pulled and what expires has gone, what
 * will have come by then, and what kits will be short of by then.
 */
export function partOverTime(today: string, ahead: PartAhead, columns = 24): readonly DayAhead[] {
  return Array.from({ length: columns }, (_, column) => {
    const date = addDays(today, column * daysPerColumn);
    return {
      date,
      have: Math.max(0, ahead.have - upTo(date, ahead.promised) - upTo(date, ahead.expiring)),
      onOrder: upTo(date, ahead.due),
      short: upTo(date, ahead.short),
    };
  });
}
