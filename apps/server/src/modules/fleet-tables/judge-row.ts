import type { Said } from '../customers/public.ts';
import type { RowChange, TableRow } from '../imports/public.ts';
import type { FleetCells } from './fleet-cells.ts';
import type { FleetFacts } from './fleet-facts.ts';
import { judgeFigures, judgePlace, type Placed, standingOf } from './judge-installation.ts';
import { type EarlierRows, namedAircraft, namedUnit } from './judge-named.ts';
import { change, judgePapers, type PaperToWrite } from './judge-papers.ts';
import type { StandingInterval } from './shapes.ts';

/** What a row does once everything in it holds. */
export interface FleetStep {
  readonly placed: Placed;
  readonly was: StandingInterval | undefined;
  /** `none`: the installation stands as the row says it. */
  readonly installation: 'new' | 'corrected' | 'none';
  readonly papers: readonly PaperToWrite[];
  readonly addsReading: boolean;
  readonly changesType: boolean;
}

export interface JudgedRow {
  readonly row: TableRow;
  readonly read: FleetCells;
  readonly step: FleetStep | undefined;
  readonly changes: readonly RowChange[];
}

interface Around {
  readonly facts: FleetFacts;
  readonly earlier: EarlierRows;
  /** What other rows say of the same meter of the same aircraft. */
  readonly others: readonly Said[];
}

/** One row held against the record and against the rows before it. */
export function judgeRow(row: TableRow, read: FleetCells, { facts, earlier, others }: Around): JudgedRow {
  const at = { line: row.line, earlier };
  const aircraft = namedAircraft(read, facts, at);
  const named = namedUnit(read, facts, at);
  const { installedOn, meter } = read;
  if (!aircraft || !named || installedOn === undefined || meter === undefined)
    return { row, read, step: undefined, changes: [] };
  const placed: Placed = { row: { ...read, installedOn }, aircraft, ...named };
  const was = standingOf(placed, facts);
  judgePlace(placed, facts, was);
  judgeFigures(placed, facts, { was, others });
  const { papers, changes } = judgePapers(placed, facts, was);
  const place = was ? placeChanges(placed, was) : [];
  const type = typeChanges(placed, facts);
  const addsReading = isNewReading(placed, facts);
  const reading = addsReading ? change('reading', '', `${hours(read.reading)} on ${read.readOn}`) : [];
  return {
    ...{ row, read, changes: [...type, ...place, ...changes, ...reading] },
    step: {
      ...{ placed, was, papers, addsReading, changesType: type.length > 0 },
      installation: was === undefined ? 'new' : place.length > 0 ? 'corrected' : 'none',
    },
  };
}

const hours = (tenths: number | 'unknown' | null) =>
  typeof tenths === 'number' ? (tenths / 10).toFixed(1) : 'unknown';

/** What the row says of the installation beside how it stands; what it leaves open stays as it is. */
function placeChanges({ row }: Placed, was: StandingInterval): RowChange[] {
  const then = row.meterThen === 'unknown' ? was.fromTenths : row.meterThen;
  return [
    change('installedOn', was.from, row.installedOn),
    change('meter', was.meter, row.meter ?? was.meter),
    change('meterThen', hours(was.fromTenths), hours(then)),
  ].flat();
}

function typeChanges({ aircraft }: Placed, facts: FleetFacts): RowChange[] {
  const known = facts.aircraft.get(aircraft.registration);
  if (!known) return [];
  return (['airframe', 'engine'] as const).flatMap((field) => change(field, known[field], aircraft[field]));
}

function isNewReading({ row, aircraft }: Placed, { meters }: FleetFacts): boolean {
  const { meter, reading, readOn } = row;
  if (readOn === undefined || reading === 'unknown' || meter === undefined) return false;
  const known = meters.on({ aircraftId: aircraft.id ?? '', meter }).readings;
  return !known.some(({ on, tenths }) => on === readOn && tenths === reading);
}
