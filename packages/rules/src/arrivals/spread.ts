import { daysBetween } from '../dates/index.ts';

/** When a unit is likely to come: its 10 %, 50 % and 90 % dates. `latest` is null where nobody can say. */
export interface LikelyDates {
  readonly earliest: string;
  readonly likely: string;
  readonly latest: string | null;
}

/** Odds by days from `today`: at `day` and earlier lies `share`; between two corners the odds run straight. */
interface Corner {
  readonly day: number;
  readonly share: number;
}

/**
 * The chance that a unit's date lies on `day` or before, by its three quantiles. Between them the odds run straight, and the tenth at either
 * end lies within a quarter of the half beside it, as straight on. Where quantiles fall on one day the whole step lies there. Without
 * a latest date the upper half has no day at all.
 *
 * Source: quantiles joined by straight lines are the plainest distribution that has them; the ends are chosen, no source.
 *
 * @example chanceBy(cornersOf({ earliest: '2026-01-01', likely: '2026-01-05', latest: '2026-01-09' }, '2026-01-01'), 4) // 0.5
 */
export function chanceBy(corners: readonly Corner[], day: number): number {
  let below: Corner | undefined;
  for (const corner of corners) {
    if (corner.day > day) {
      if (!below) return 0;
      return below.share + ((corner.share - below.share) * (day - below.day)) / (corner.day - below.day);
    }
    below = corner;
  }
  return below?.share ?? 0;
}

export function cornersOf({ earliest, likely, latest }: LikelyDates, today: string): readonly Corner[] {
  const [first, middle] = [daysBetween(today, earliest), daysBetween(today, likely)];
  const head: Corner[] = [
    { day: first - (middle - first) / 4, share: 0 },
    { day: first, share: 0.1 },
    { day: middle, share: 0.5 },
  ];
  if (latest === null) return head;
  const last = daysBetween(today, latest);
  return [...head, { day: last, share: 0.9 }, { day: last + (last - middle) / 4, share: 1 }];
}
