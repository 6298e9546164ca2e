export interface BladeStation {
  /** Distance from the hub's centre, as the manual names it; decimal text. */
  readonly station: string;
  /** Smallest width the manual allows here at this diameter; null where it gives none. */
  readonly lowest: string | null;
  /** As measured; null while it has not been. Never drawn from anything else. */
  readonly measured: string | null;
}

export interface DrawnStation extends BladeStation {
  /** Along the blade, 0 at the innermost station, 1 at the outermost. */
  readonly along: number;
  /** Half widths as a share of the widest value drawn; null where there is none. */
  readonly halfLowest: number | null;
  readonly halfMeasured: number | null;
  readonly isBelow: boolean;
}

/** Compares two decimal texts by value. Numbers of a few digits as in a limit table: a double holds them exactly enough to order them. */
function isLess(a: string, b: string): boolean {
  return Number(a) < Number(b);
}

/** Places stations along the blade in true distance, and widths in true proportion to each other. */
export function layOut(stations: readonly BladeStation[]): DrawnStation[] {
  const ordered = stations.toSorted((a, b) => Number(a.station) - Number(b.station));
  const first = Number(ordered[0]?.station ?? 0);
  const span = Number(ordered.at(-1)?.station ?? 1) - first || 1;
  const widths = ordered.flatMap(({ lowest, measured }) => [lowest, measured].filter((width) => width !== null));
  const widest = Math.max(...widths.map(Number), 0) || 1;
  const half = (width: string | null) => (width === null ? null : Number(width) / widest / 2);
  return ordered.map((each) => ({
    ...each,
    along: (Number(each.station) - first) / span,
    halfLowest: half(each.lowest),
    halfMeasured: half(each.measured),
    isBelow: each.measured !== null && each.lowest !== null && isLess(each.measured, each.lowest),
  }));
}

/** One sentence a station, for those who cannot see the drawing. */
export function stationWords(each: BladeStation, isBelow: boolean, unit: string): string {
  const limit = each.lowest === null ? 'no limit' : `limit ${each.lowest} ${unit}`;
  if (each.measured === null) return `Station ${each.station}: not measured, ${limit}`;
  return `Station ${each.station}: ${each.measured} ${unit}, ${limit}${isBelow ? ', below the limit' : ''}`;
}

/** Neighbouring stations that have a width, run by run: an outline must not bridge a station nobody measured. */
export function runsOf(
  stations: readonly DrawnStation[],
  half: (each: DrawnStation) => number | null,
): DrawnStation[][] {
  const runs: DrawnStation[][] = [[]];
  for (const each of stations) {
    if (half(each) === null) runs.push([]);
    else runs.at(-1)?.push(each);
  }
  return runs.filter((run) => run.length > 1);
}
