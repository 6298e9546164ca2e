import type { MeterChange, MeterReading } from './pieces.ts';

type Change = Pick<MeterChange, 'on' | 'oldTenths' | 'newTenths'>;

/**
 * Readings of one kind of meter of an aircraft as the newest meter would have shown them: a replaced meter's figures go on where the
 * new one began. What came before a change whose old figure nobody wrote down cannot be carried over and is left out. In order of
 * day; figures carried over may lie below zero.
 *
 * Source: arithmetic.
 *
 * @example 2990.0 h, then replaced at 3000.0 h by one at 0.0 h that shows 12.0 h: −10.0 h, then 12.0 h
 */
export function continuedLine<R extends Pick<MeterReading, 'no' | 'date' | 'tenths'>>(
  readings: readonly R[],
  changes: readonly Change[],
): R[] {
  const inOrder = [...changes].sort((a, b) => (a.on < b.on ? -1 : 1));
  return readings
    .flatMap((reading) => {
      const added = carriedOver(inOrder, reading.no);
      return added === 'unknown' ? [] : [{ ...reading, tenths: reading.tenths + added }];
    })
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.tenths - b.tenths));
}

/** What is added to a figure of meter `no`, so that it stands on the newest meter's line; changes in order of day. */
export function carriedOver(changes: readonly Change[], no: number): number | 'unknown' {
  let added = 0;
  for (const { oldTenths, newTenths } of changes.slice(no - 1)) {
    if (oldTenths === 'unknown' || newTenths === 'unknown') return 'unknown';
    added += newTenths - oldTenths;
  }
  return added;
}
