import { type Meter, meters } from '@hubwright/contracts/customers/operations';
import type { readingsOperations } from '@hubwright/contracts/customers/readings-operations';
import type { Sent } from '@hubwright/contracts/operation';
import { parseHours } from '../../format/numbers.ts';
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

const mostADay = 120;

/** What the figure asks about: lower than the last, or more than twelve hours a day since. Undefined where it asks nothing. */
export function doubtOf({ last }: GridRow, { hours }: GridEntry, readOn: string): 'lower' | 'fast' | undefined {
  const tenths = parseHours(hours);
  if (!last || typeof tenths !== 'number') return undefined;
  if (tenths < last.hoursTenths && readOn >= last.readOn) return 'lower';
  const days = Math.max(1, Math.round((Date.parse(readOn) - Date.parse(last.readOn)) / 86_400_000));
  return tenths - last.hoursTenths > mostADay * days ? 'fast' : undefined;
}

type Row = Sent<typeof readingsOperations.recordReadings>['rows'][number];

/** The rows that carry a figure, as they are sent. */
export function sentRows(rows: readonly GridRow[], entries: Readonly<Record<string, GridEntry>>): Row[] {
  return rows.flatMap(({ key, aircraft, meter }): Row[] => {
    const entry = entries[key] ?? emptyEntry;
    const tenths = parseHours(entry.hours);
    if (entry.hours === '') return [];
    const old = parseHours(entry.oldHours);
    return [
      {
        ...{ aircraftId: aircraft.id, meter, sure: entry.isSure },
        hoursTenths: typeof tenths === 'number' ? tenths : Number.NaN,
        ...(entry.isReplaced
          ? { replaced: { on: entry.replacedOn, oldTenths: typeof old === 'number' ? old : ('unknown' as const) } }
          : {}),
      },
    ];
  });
}
