/** A calendar date as Prisma wants it for a `date` column: midnight UTC of that day, whatever zone this machine is in. */
export function toDbDate(date: string): Date {
  return new Date(`${date}T00:00:00.000Z`);
}

/** The calendar date a `date` column holds. */
export function fromDbDate(value: Date): string {
  return value.toISOString().slice(0, 10);
}

/** The same for a column that may be empty. */
export function fromDbDateOrNull(value: Date | null): string | null {
  return value === null ? null : fromDbDate(value);
}
