import type { Half, PersonCalendar, Week } from '@hubwright/rules/working-time';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';

/** What reading calendars needs; a transaction and the reading client both have it. */
export interface CalendarReads {
  readonly shiftAssignment: Pick<Tx['shiftAssignment'], 'findMany'>;
  readonly shopHoliday: Pick<Tx['shopHoliday'], 'findMany'>;
  readonly absence: Pick<Tx['absence'], 'findMany'>;
}

/**
 * Calendars of these people for days from `from` to `to`, as the rules of working time take them: four reads, however many people.
 * Before the first pattern of their own a person works by the shop's.
 */
export async function calendarsOf(
  reads: CalendarReads,
  personIds: readonly string[],
  { zone, from, to }: { zone: string; from: string; to: string },
): Promise<Map<string, PersonCalendar>> {
  const people = { in: [...personIds] };
  const [assigned, holidays, absences] = await Promise.all([
    reads.shiftAssignment.findMany({
      where: { endedAt: null, validFrom: { lte: toDbDate(to) }, OR: [{ personId: null }, { personId: people }] },
      include: { pattern: { select: { week: true } } },
      orderBy: { validFrom: 'asc' },
    }),
    reads.shopHoliday.findMany({ where: { removedAt: null, on: { gte: toDbDate(from), lte: toDbDate(to) } } }),
    reads.absence.findMany({
      where: { personId: people, cancelledAt: null, from: { lte: toDbDate(to) }, to: { gte: toDbDate(from) } },
    }),
  ]);
  const weeksOf = (personId: string | null) =>
    assigned
      .filter((one) => one.personId === personId)
      .map(({ validFrom, pattern }) => ({ validFrom: fromDbDate(validFrom), week: pattern.week as unknown as Week }));
  const shared = weeksOf(null);
  const closed = holidays.map(({ on, part }) => ({ on: fromDbDate(on), part: part as 'whole' | Half }));
  return new Map(
    personIds.map((personId) => {
      const own = weeksOf(personId);
      const [first] = own;
      const before = shared.filter(({ validFrom }) => first === undefined || validFrom < first.validFrom);
      const away = absences.filter((one) => one.personId === personId).map(awayOf);
      return [personId, { zone, weeks: [...before, ...own], holidays: closed, absences: away }];
    }),
  );
}

function awayOf(row: { from: Date; fromHalf: string; to: Date; toHalf: string }) {
  const [fromHalf, toHalf] = [row.fromHalf as Half, row.toHalf as Half];
  return { from: fromDbDate(row.from), fromHalf, to: fromDbDate(row.to), toHalf };
}
