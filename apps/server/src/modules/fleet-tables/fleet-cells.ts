import {
  hourMeters,
  type Meter,
  meters,
  registration as registrationText,
} from '@hubwright/contracts/customers/operations';
import { aircraftPositions } from '@hubwright/contracts/units/interval-operations';
import { RuleError } from '@hubwright/rules/errors';
import { normaliseSerial } from '@hubwright/rules/identity';
import { Cells } from '../imports/public.ts';
import type { Mapping } from './shapes.ts';

/** Hours in tenths. */
export type Tenths = number | 'unknown';

/** A row as it reads; what could not be read is undefined and has a fault at its cell. */
export interface FleetCells {
  readonly cells: Cells;
  readonly registration: string;
  readonly airframe: string;
  readonly engine: string;
  readonly position: string;
  readonly maker: string;
  readonly model: string;
  readonly serial: string | undefined;
  readonly installedOn: string | undefined;
  readonly meter: Meter | undefined;
  readonly meterThen: Tenths;
  readonly sinceNew: Tenths;
  readonly sinceOverhaul: Tenths;
  /** Not since it was new: what it has since new, it has since overhaul. */
  readonly neverOverhauled: boolean;
  readonly overhauledOn: string | undefined;
  readonly reading: Tenths;
  readonly readOn: string | undefined;
}

const shortPositions: Record<string, string> = { l: 'left', r: 'right', c: 'center', centre: 'center', s: 'single' };
const neverWords = new Set(['never', 'never overhauled', 'none since new']);
const shortMeters: Record<string, Meter> = {
  tach: 'tachometer',
  tacho: 'tachometer',
  hours: 'hour-meter',
  hourmeter: 'hour-meter',
  'airframe-hours': 'airframe',
  'airframe-time': 'airframe',
  ldg: 'landings',
  landing: 'landings',
  start: 'starts',
};

export function fleetCells(mapping: Mapping, row: readonly string[], today: string): FleetCells {
  const cells = new Cells(mapping, row);
  const neverOverhauled = neverWords.has(cells.text('overhauledOn').toLowerCase());
  const said: FleetCells = {
    cells,
    registration: registrationOf(cells),
    airframe: cells.text('airframe'),
    engine: cells.text('engine'),
    position: positionOf(cells),
    maker: cells.text('maker'),
    model: cells.needed('model', 60),
    serial: serialOf(cells),
    installedOn: cells.needed('installedOn') === '' ? undefined : cells.day('installedOn'),
    meter: meterOf(cells, hourMeters),
    meterThen: cells.hours('meterThen'),
    sinceNew: cells.hours('sinceNew'),
    sinceOverhaul: cells.hours('sinceOverhaul'),
    neverOverhauled,
    overhauledOn: neverOverhauled ? undefined : cells.day('overhauledOn'),
    reading: cells.hours('reading'),
    readOn: cells.day('readOn'),
  };
  const leavesItOpen = neverOverhauled && said.sinceOverhaul === 'unknown';
  const read = leavesItOpen ? { ...said, sinceOverhaul: said.sinceNew } : said;
  refuseNonsense(read, today);
  return read;
}

export function registrationOf(cells: Cells): string {
  const text = cells.needed('registration', 20).toUpperCase();
  if (text !== '' && !registrationText.safeParse(text).success)
    cells.wrong('registration', 'A registration has 2 to 10 letters, digits or dashes');
  return text;
}

/** From which meter the figures come is part of every one. */
export function meterOf(cells: Cells, among: readonly Meter[] = meters): Meter | undefined {
  const text = cells.needed('meter').toLowerCase().replaceAll(' ', '-');
  const short = shortMeters[text];
  if (short && among.includes(short)) return short;
  return text === '' ? undefined : cells.oneOf('meter', among);
}

function positionOf(cells: Cells): string {
  const text = cells.text('position').toLowerCase();
  return shortPositions[text] ?? cells.oneOf('position', aircraftPositions) ?? 'single';
}

function serialOf(cells: Cells): string | undefined {
  const text = cells.needed('serial', 40);
  if (text === '') return undefined;
  try {
    return normaliseSerial(text);
  } catch (error) {
    if (error instanceof RuleError) return cells.wrong('serial', error.message);
    throw error;
  }
}

/** What contradicts itself, whatever is on record. */
function refuseNonsense(row: FleetCells, today: string): void {
  const { cells, installedOn, overhauledOn, readOn, reading, sinceNew, sinceOverhaul } = row;
  for (const field of ['installedOn', 'overhauledOn', 'readOn'] as const) {
    const day = row[field];
    if (day !== undefined && day > today) cells.wrong(field, `${day} is still to come: correct the day`);
  }
  if (typeof sinceNew === 'number' && typeof sinceOverhaul === 'number' && sinceOverhaul > sinceNew)
    cells.wrong('sinceOverhaul', 'More than its time since new: one of the two is wrong');
  if (row.neverOverhauled && typeof sinceOverhaul === 'number' && sinceOverhaul !== sinceNew)
    cells.wrong(
      'sinceOverhaul',
      'Never overhauled, so this is its time since new: leave it open, or give the overhaul',
    );
  if (overhauledOn && installedOn && overhauledOn > installedOn)
    cells.wrong('overhauledOn', `After it was installed on ${installedOn}: give the installation after the overhaul`);
  if (readOn === undefined && typeof reading === 'number')
    cells.wrong('readOn', 'The current reading needs the day it was read on');
  if (readOn !== undefined && reading === 'unknown')
    cells.wrong('reading', `Say what the meter showed on ${readOn}, or leave the day out too`);
  if (readOn && installedOn && readOn < installedOn)
    cells.wrong('readOn', `Before it was installed on ${installedOn}: give a reading since then`);
}
