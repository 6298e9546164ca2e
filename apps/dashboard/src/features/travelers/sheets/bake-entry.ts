/** A bake as it is being written down: when it began, and the chart as lines of date, time and temperature. */
export interface BakeDraft {
  readonly startedAt: string;
  readonly chart: string;
}
export const noBake: BakeDraft = { startedAt: '', chart: '' };

/** A line each: `2026-03-01 12:20 350`, in this device's time. Null where a line says something else. */
function chartFrom(text: string): { at: string; temperature: string }[] | null {
  const lines = text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const rows = lines.map((line) => /^(\d{4}-\d\d-\d\d)[T ,;]+(\d\d:\d\d)[ ,;\t]+(-?\d{1,5}(?:\.\d{1,3})?)$/.exec(line));
  if (rows.some((row) => row === null)) return null;
  const readings = rows.flatMap((row) =>
    row ? [{ time: Date.parse(`${row[1]}T${row[2]}`), temperature: row[3] ?? '' }] : [],
  );
  if (readings.some(({ time }) => Number.isNaN(time))) return null;
  return readings.map(({ time, temperature }) => ({ at: new Date(time).toISOString(), temperature }));
}

/** The entry as the command takes it; undefined while it cannot be read. */
export function bakeInput({ startedAt, chart }: BakeDraft) {
  const readings = chartFrom(chart);
  if (!readings || readings.length < 2 || Number.isNaN(Date.parse(startedAt))) return undefined;
  return { startedAt: new Date(startedAt).toISOString(), chart: readings };
}
