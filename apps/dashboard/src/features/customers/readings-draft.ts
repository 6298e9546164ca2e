import { type Meter, measureOf, meters } from '@hubwright/contracts/customers/operations';
import type { readingsOperations } from '@hubwright/contracts/customers/readings-operations';
import type { Sent } from '@hubwright/contracts/operation';
import { figureOf, parseFigure, typedAs } from '../../format/meter-words.tsx';
import type { Aircraft } from './customers.ts';

/** One figure to type: the meter of an aircraft, with what it showed last. */
export interface GridRow {
  readonly key: string;
  readonly aircraft: Aircraft;
  readonly meter: Meter;
  readonly last: Aircraft['latestReadings'][number] | undefined;
}

/** What is typed into a row. */
export interface GridEntry {
  readonly hours: string;
  readonly isReplaced: boolean;
  readonly replacedOn: string;
  readonly oldHours: string;
  readonly isSure: boolean;
}

export const emptyEntry: GridEntry = { hours: '', isReplaced: false, replacedOn: '', oldHours: '', isSure: false };

/** Every meter that was ever read; of an aircraft never read, the first kind. */
export function gridRows(aircraft: readonly Aircraft[], first: Meter = meters[0]): GridRow[] {
  return aircraft.flatMap((one): GridRow[] =>
    one.latestReadings.length === 0
      ? [{ key: `${one.id} ${first}`, aircraft: one, meter: first, last: undefined }]
      : one.latestReadings.map((last) => ({ key: `${one.id} ${last.meter}`, aircraft: one, meter: last.meter, last })),
  );
}

const mostADay = { hours: 120, cycles: 60 };

/** What the figure asks about: lower than the last, or more than twelve hours or sixty cycles a day since. Undefined where it asks nothing. */
export function doubtOf({ last, meter }: GridRow, { hours }: GridEntry, readOn: string): 'lower' | 'fast' | undefined {
  const figure = parseFigure(meter, hours);
  if (!last || figure === undefined) return undefined;
  if (figure < figureOf(last) && readOn >= last.readOn) return 'lower';
  const days = Math.max(1, Math.round((Date.parse(readOn) - Date.parse(last.readOn)) / 86_400_000));
  return figure - figureOf(last) > mostADay[measureOf(meter)] * days ? 'fast' : undefined;
}

type Row = Sent<typeof readingsOperations.recordReadings>['rows'][number];

/** The rows that carry a figure, as they are sent. */
export function sentRows(rows: readonly GridRow[], entries: Readonly<Record<string, GridEntry>>): Row[] {
  return rows.flatMap(({ key, aircraft, meter }): Row[] => {
    const entry = entries[key] ?? emptyEntry;
    if (entry.hours === '') return [];
    const old = parseFigure(meter, entry.oldHours);
    return [
      {
        ...{ aircraftId: aircraft.id, meter, sure: entry.isSure },
        [typedAs(meter).name]: parseFigure(meter, entry.hours) ?? Number.NaN,
        ...(entry.isReplaced ? { replaced: { on: entry.replacedOn, oldTenths: old ?? ('unknown' as const) } } : {}),
      },
    ];
  });
}
