import type { ChartReading } from '@hubwright/rules/chart';
import { refuseOtherScale } from '@hubwright/rules/chart';
import { RuleError } from '@hubwright/rules/errors';

/** A line of a chart as the command takes it. */
export interface ChartLine {
  readonly at: string;
  readonly temperature: string;
  readonly vacuum?: string;
}

const shape =
  /^(\d{4}-\d\d-\d\d)[T ,;]+(\d\d:\d\d)[ ,;\t]+(-?\d{1,5}(?:\.\d{1,3})?)(?:[ ,;\t]+(\d{1,5}(?:\.\d{1,3})?))?$/;

/** A line each: `2026-03-01 12:20 350`, with the vacuum behind it where there is one, in this device’s time. Null where a line says something else. */
export function chartFrom(text: string): ChartLine[] | null {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  const rows = lines.map((line) => shape.exec(line.trim()));
  if (rows.some((row) => row === null)) return null;
  const readings = rows.flatMap((row) =>
    row ? [{ time: Date.parse(`${row[1]}T${row[2]}`), temperature: row[3] ?? '', vacuum: row[4] }] : [],
  );
  if (readings.some(({ time }) => Number.isNaN(time))) return null;
  return readings.map(({ time, temperature, vacuum }) => ({
    ...{ at: new Date(time).toISOString(), temperature },
    ...(vacuum === undefined ? {} : { vacuum }),
  }));
}

/** In numbers, as rules read it. */
export function readingsOf<L extends { at: string; temperature: string; vacuum?: string | undefined }>(
  chart: readonly L[],
): (ChartReading & { vacuum?: number })[] {
  return chart.map(({ at, temperature, vacuum }) => ({
    ...{ at: Date.parse(at), temperature: Number(temperature) },
    ...(vacuum === undefined ? {} : { vacuum: Number(vacuum) }),
  }));
}

/** Why its unit is in doubt, in words; undefined where it is not. */
export function unitDoubt(
  chart: readonly ChartLine[],
  { low, high, unit }: { low: string; high: string; unit: string },
): string | undefined {
  try {
    refuseOtherScale(readingsOf(chart), { low: Number(low), high: Number(high), unit }, undefined);
    return undefined;
  } catch (error) {
    if (error instanceof RuleError) return error.message;
    throw error;
  }
}
