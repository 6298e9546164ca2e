/** When one limit falls due, by hours or by calendar. */
export interface DueByLimit {
  readonly kind: 'hours' | 'calendar' | 'life' | 'directive';
  /** Which limit: as a person names it. */
  readonly what: string;
  readonly dueOn: string | 'unknown';
  readonly earliest: string | 'unknown';
  readonly latest: string | 'unknown';
  readonly overdue: boolean;
  readonly requirement: 'recommended' | 'required';
}

export interface FirstLimit {
  readonly dueOn: string | 'unknown';
  readonly earliest: string | 'unknown';
  readonly latest: string | 'unknown';
  readonly overdue: boolean;
  /** What comes first at even odds; undefined where no limit has a date. */
  readonly governing: DueByLimit | undefined;
}

/**
 * Of several limits, whichever comes first. The band is the earliest early day and the earliest late day of them all: one that is due
 * for certain on a day leaves no later one. A limit without a date bounds nothing; overdue is what one of them is. A further limit, or a
 * tighter one, never moves anything later. Whichever first is common practice, no source.
 */
export function firstLimit(limits: readonly DueByLimit[]): FirstLimit {
  const governing = limits
    .filter(({ dueOn }) => dueOn !== 'unknown')
    .reduce<DueByLimit | undefined>(
      (first, one) => (first === undefined || comesBefore(one, first) ? one : first),
      undefined,
    );
  return {
    dueOn: least(limits.map(({ dueOn }) => dueOn)),
    earliest: limits.some(isUnbounded) ? 'unknown' : least(limits.map(({ earliest }) => earliest)),
    latest: least(limits.map(({ latest }) => latest)),
    overdue: limits.some(({ overdue }) => overdue),
    governing,
  };
}

/** It has a date, and may for all that is known be due before it. */
function isUnbounded({ dueOn, earliest }: DueByLimit): boolean {
  return dueOn !== 'unknown' && earliest === 'unknown';
}

/** On the same day what is required goes before what is recommended. */
function comesBefore(one: DueByLimit, other: DueByLimit): boolean {
  if (one.dueOn !== other.dueOn) return one.dueOn < other.dueOn;
  return one.requirement === 'required' && other.requirement === 'recommended';
}

function least(dates: readonly (string | 'unknown')[]): string | 'unknown' {
  return dates.filter((date) => date !== 'unknown').sort()[0] ?? 'unknown';
}
