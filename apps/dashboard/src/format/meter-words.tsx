import { cycleMeters, hourMeters, type Meter, measureOf } from '@hubwright/contracts/customers/operations';
import { formatHours, formatWhole, parseHours } from './numbers.ts';
import { Hours, Quantity } from './values.tsx';

/** The meters hours and cycles are read from. */
export const meterWords: Record<Meter, string> = {
  tachometer: 'tachometer',
  'hour-meter': 'hour meter',
  airframe: 'airframe hours',
  landings: 'landings',
  starts: 'starts',
};
const choicesOf = <Kind extends Meter>(kinds: readonly Kind[]) =>
  kinds.map((value) => ({ value, text: meterWords[value] }));
export const hourMeterChoices = choicesOf(hourMeters);
export const cycleMeterChoices = choicesOf(cycleMeters);
export const meterChoices = choicesOf<Meter>([...hourMeters, ...cycleMeters]);

/** How a figure of a meter is typed. */
export function typedAs(meter: Meter): { unit: string; decimals: number; name: 'hoursTenths' | 'cycles' } {
  return measureOf(meter) === 'cycles'
    ? { unit: 'cycles', decimals: 0, name: 'cycles' }
    : { unit: 'h', decimals: 1, name: 'hoursTenths' };
}

/** What was typed: tenths of an hour, or whole cycles; undefined where it is neither. */
export function parseFigure(meter: Meter, text: string): number | undefined {
  if (measureOf(meter) === 'cycles') return /^\d+$/.test(text) ? Number(text) : undefined;
  const tenths = parseHours(text);
  return typeof tenths === 'number' ? tenths : undefined;
}

/** What a meter showed, whichever it counts. */
export function figureOf(reading: { hoursTenths: number | null; cycles: number | null }): number {
  return reading.hoursTenths ?? reading.cycles ?? 0;
}

/** A figure for a file: hours with a point, or whole cycles. */
export function figureValue(meter: Meter, figure: number): number {
  return measureOf(meter) === 'cycles' ? figure : figure / 10;
}

export function figureText(meter: Meter, figure: number): string {
  return measureOf(meter) === 'cycles' ? `${formatWhole(figure)} cycles` : `${formatHours(figure)} h`;
}

/** Hours from tenths, or cycles; unknown is a word and takes no unit. */
export function MeterFigure({ meter, figure }: { meter: Meter; figure: number | 'unknown' }) {
  if (figure === 'unknown' || measureOf(meter) === 'hours') return <Hours tenths={figure} />;
  return <Quantity amount={figure} unit="cycles" />;
}
