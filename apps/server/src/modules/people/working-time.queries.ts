import type { Input, Reply } from '@hubwright/contracts/operation';
import type { AbsenceKind, DayPart, workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { addDays } from '@hubwright/rules/dates';
import { awayOverlaps, minutesAWeek, type PersonCalendar, type Week, workDay } from '@hubwright/rules/working-time';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, fromDbDateOrNull, toDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { calendarsOf } from './calendars.ts';

type Operations = typeof workingTimeOperations;
type Presence = Reply<Operations['presence']>;
type PresenceDay = Presence['rows'][number]['days'][number];

@Injectable()
export class WorkingTimeQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async week(): Promise<Reply<Operations['workingWeek']>> {
    const { shiftPattern, shopHoliday } = this.reads.models;
    const [patterns, assignments, holidays] = await Promise.all([
      shiftPattern.findMany({ orderBy: { name: 'asc' }, take: 200 }),
      this.assignments({}),
      shopHoliday.findMany({ where: { removedAt: null }, orderBy: { on: 'desc' }, take: 200 }),
    ]);
    return {
      patterns: patterns.map((row) => {
        const week = row.week as unknown as Reply<Operations['workingWeek']>['patterns'][number]['week'];
        return { ...row, week, minutesAWeek: minutesAWeek(week as Week), retiredOn: fromDbDateOrNull(row.retiredOn) };
      }),
      assignments,
      holidays: holidays.map(({ id, on, part, name }) => ({ id, on: fromDbDate(on), part: part as DayPart, name })),
    };
  }

  private async assignments(where: { personId?: string }) {
    const rows = await this.reads.models.shiftAssignment.findMany({
      where: { ...where, endedAt: null },
      include: { pattern: { select: { name: true } }, person: { select: { displayName: true } } },
      orderBy: { validFrom: 'desc' },
      take: 500,
    });
    return rows.map(({ id, personId, person, patternId, pattern, validFrom }) => ({
      ...{ id, personId, person: person?.displayName ?? null, patternId, pattern: pattern.name },
      validFrom: fromDbDate(validFrom),
    }));
  }

  async absencesOf({ personId }: Input<Operations['absencesOf']>): Promise<Reply<Operations['absencesOf']>> {
    const person = found(await this.reads.models.person.findUnique({ where: { id: personId } }), 'This person');
    const [rows, shifts] = await Promise.all([
      this.reads.models.absence.findMany({
        where: { personId, cancelledAt: null },
        orderBy: { from: 'desc' },
        take: 200,
      }),
      this.assignments({ personId }),
    ]);
    return {
      rows: rows.map((row) => ({
        ...row,
        ...{ person: person.displayName, kind: row.kind as AbsenceKind },
        ...{ from: fromDbDate(row.from), to: fromDbDate(row.to) },
        ...{ fromHalf: row.fromHalf as 'morning', toHalf: row.toHalf as 'morning' },
      })),
      shifts,
    };
  }

  /** Everyone who works here, by the seven days of a week. */
  async presence({ week }: Input<Operations['presence']>): Promise<Presence> {
    const zone = await this.zone.zone();
    const monday = mondayOf(week ?? (await this.zone.today(this.clock.now())));
    const dates = Array.from({ length: 7 }, (_, index) => addDays(monday, index));
    const people = await this.reads.models.person.findMany({
      where: { active: true },
      select: { id: true, displayName: true, initials: true },
      orderBy: { displayName: 'asc' },
      take: 500,
    });
    const span = { zone, from: monday, to: addDays(monday, 6) };
    const ids = people.map(({ id }) => id);
    const days = { gte: toDbDate(span.from), lte: toDbDate(span.to) };
    const [calendars, holidays, absences] = await Promise.all([
      calendarsOf(this.reads.models, ids, span),
      this.reads.models.shopHoliday.findMany({ where: { removedAt: null, on: days } }),
      this.reads.models.absence.findMany({
        where: { personId: { in: ids }, cancelledAt: null, from: { lte: days.lte }, to: { gte: days.gte } },
      }),
    ]);
    const named = new Map(holidays.map(({ on, name }) => [fromDbDate(on), name]));
    const rows = people.map(({ id, displayName, initials }) => ({
      ...{ personId: id, person: displayName, initials },
      days: dates.map((date) => ({
        ...dayOf(calendars.get(id), date),
        holiday: named.get(date) ?? null,
        absence: kindOn(
          absences.filter(({ personId }) => personId === id),
          date,
        ),
      })),
    }));
    return { monday, days: dates.map((date, index) => headOf(rows, { date, index, named })), rows };
  }
}

function headOf(
  rows: Presence['rows'],
  { date, index, named }: { date: string; index: number; named: ReadonlyMap<string, string> },
): Presence['days'][number] {
  const cells = rows.flatMap(({ days }) => days[index] ?? []);
  return {
    ...{ date, holiday: named.get(date) ?? null },
    here: cells.filter(({ availableMinutes }) => availableMinutes > 0).length,
    away: cells.filter(({ plannedMinutes, availableMinutes }) => plannedMinutes > 0 && availableMinutes === 0).length,
  };
}

function dayOf(calendar: PersonCalendar | undefined, date: string): Omit<PresenceDay, 'holiday' | 'absence'> {
  if (!calendar) return { date, plannedMinutes: 0, availableMinutes: 0, from: null, to: null };
  const { plannedMinutes, availableMinutes, periods } = workDay(calendar, date);
  const clock = (at: number | undefined) =>
    at === undefined
      ? null
      : new Date(at).toLocaleTimeString('en-GB', { timeZone: calendar.zone, hour: '2-digit', minute: '2-digit' });
  return { date, plannedMinutes, availableMinutes, from: clock(periods[0]?.start), to: clock(periods.at(-1)?.end) };
}

function kindOn(
  absences: readonly { kind: string; from: Date; fromHalf: string; to: Date; toHalf: string }[],
  date: string,
): AbsenceKind | null {
  const day = { from: date, fromHalf: 'morning', to: date, toHalf: 'afternoon' } as const;
  const on = absences.find((row) =>
    awayOverlaps(
      {
        ...{ from: fromDbDate(row.from), fromHalf: row.fromHalf as 'morning' },
        ...{ to: fromDbDate(row.to), toHalf: row.toHalf as 'morning' },
      },
      day,
    ),
  );
  return (on?.kind as AbsenceKind | undefined) ?? null;
}

function mondayOf(date: string): string {
  return addDays(date, -((new Date(`${date}T00:00:00Z`).getUTCDay() + 6) % 7));
}
