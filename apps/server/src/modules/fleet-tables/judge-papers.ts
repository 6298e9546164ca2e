import type { RowChange } from '../imports/public.ts';
import { declaredInTable } from '../units/public.ts';
import type { FleetFacts } from './fleet-facts.ts';
import type { Placed } from './judge-installation.ts';
import type { PaperOnRecord, StandingInterval } from './shapes.ts';

/** Times to put on record: as a new paper, or in the place of what a table said before of the same installation. */
export interface PaperToWrite {
  readonly basis: string;
  readonly replaces: string | undefined;
  readonly on: string;
  readonly sinceNewTenths: number | null;
  readonly sinceOverhaulTenths: number | null;
  readonly meterTenths: number | null;
}

export interface JudgedPapers {
  readonly papers: readonly PaperToWrite[];
  readonly changes: readonly RowChange[];
}

const known = (tenths: number | 'unknown') => (tenths === 'unknown' ? null : tenths);
const words = (tenths: number | null) => (tenths === null ? 'unknown' : (tenths / 10).toFixed(1));

/**
 * What a row says of times, beside what is on record. What it leaves open changes nothing. Times are those at installation, so that
 * what was flown since is computed like that of any unit.
 */
export function judgePapers(placed: Placed, facts: FleetFacts, was: StandingInterval | undefined): JudgedPapers {
  const papers = facts.papers.get(placed.unit.id ?? '') ?? [];
  const own = (basis: string) =>
    was && papers.find((paper) => paper.intervalId === was.intervalId && paper.basis === basis);
  const declared = declaredOf(placed, own(declaredInTable));
  const overhaul = overhaulOf(placed, papers, own('overhaul'));
  const restated = declared.papers.length > 0 && overhaul.papers.length === 0 ? again(placed, own('overhaul')) : [];
  return {
    papers: [...overhaul.papers, ...restated, ...declared.papers],
    changes: [...declared.changes, ...overhaul.changes],
  };
}

function declaredOf({ row, unit }: Placed, before: PaperOnRecord | undefined): JudgedPapers {
  const sinceNewTenths = known(row.sinceNew) ?? before?.sinceNewTenths ?? null;
  const sinceOverhaulTenths = known(row.sinceOverhaul) ?? before?.sinceOverhaulTenths ?? null;
  const says = sinceNewTenths !== null || sinceOverhaulTenths !== null;
  if (!before && !says && unit.id !== undefined) return { papers: [], changes: [] };
  const changes = [
    change('sinceNew', words(before?.sinceNewTenths ?? null), words(sinceNewTenths)),
    change('sinceOverhaul', words(before?.sinceOverhaulTenths ?? null), words(sinceOverhaulTenths)),
  ].flat();
  if (before && changes.length === 0 && before.on === row.installedOn) return { papers: [], changes: [] };
  const meterTenths = known(row.meterThen);
  const on = row.installedOn;
  const never =
    row.neverOverhauled && sinceOverhaulTenths !== null
      ? change('overhauledOn', 'never', 'its time since new counts as its time since overhaul')
      : [];
  const paper = { basis: declaredInTable, replaces: before?.id, on, sinceNewTenths, sinceOverhaulTenths, meterTenths };
  return { papers: [paper], changes: [...changes, ...never] };
}

function overhaulOf(placed: Placed, all: readonly PaperOnRecord[], before: PaperOnRecord | undefined): JudgedPapers {
  const { cells, overhauledOn, neverOverhauled } = placed.row;
  const overhauls = all.filter(({ basis }) => basis === 'overhaul');
  if (neverOverhauled && overhauls.length > 0)
    cells.wrong('overhauledOn', `An overhaul of ${overhauls.at(-1)?.on} is on record: correct the row`);
  if (overhauledOn === undefined || overhauls.some(({ on }) => on === overhauledOn)) return { papers: [], changes: [] };
  const last = overhauls.filter(({ id }) => id !== before?.id).at(-1);
  if (last && last.on > overhauledOn) {
    cells.wrong('overhauledOn', `An overhaul of ${last.on} is on record, after this day: correct the day`);
    return { papers: [], changes: [] };
  }
  return {
    papers: [overhaulPaper(placed, overhauledOn, before?.id)],
    changes: change('overhauledOn', before?.on ?? last?.on ?? 'unknown', overhauledOn),
  };
}

/** The day of the overhaul stays, what the meter would have shown then follows the times. */
function again(placed: Placed, before: PaperOnRecord | undefined): PaperToWrite[] {
  return before ? [overhaulPaper(placed, before.on, before.id)] : [];
}

/** The meter as it would have stood at the overhaul had the unit flown on it since: only so its limit can be told in meter hours. */
function overhaulPaper({ row }: Placed, on: string, replaces: string | undefined): PaperToWrite {
  const { meterThen, sinceOverhaul } = row;
  const then = meterThen === 'unknown' || sinceOverhaul === 'unknown' ? -1 : meterThen - sinceOverhaul;
  return {
    ...{ basis: 'overhaul', replaces, on, sinceNewTenths: null, sinceOverhaulTenths: null },
    meterTenths: then < 0 ? null : then,
  };
}

export function change(field: string, from: string, to: string): RowChange[] {
  return from === to ? [] : [{ field, from, to }];
}
