import { z } from 'zod';
import { type ImportField, needed, open } from './fields.ts';

/** What a customer's table can bring in. */
export const fleetKinds = ['fleet', 'readings'] as const;
export const fleetKind = z.enum(fleetKinds).meta({ id: 'FleetKind' });
export type FleetKind = (typeof fleetKinds)[number];

export const fleetTitles: Record<FleetKind, string> = {
  fleet: 'Aircraft and the units on them',
  readings: 'Meter readings',
};

/** The most rows of a customer's table: every aircraft and unit it names is held while it is taken over. */
export const fleetRows = 3_000;

const registration = needed([
  'registration',
  'registration',
  'As on the aircraft',
  'ZZ-OVC',
  ['reg', 'tail', 'tail number', 'aircraft registration', 'aircraft'],
]);
const meter = needed([
  'meter',
  'meter',
  'tachometer, hour meter or airframe: from which the hours come',
  'tachometer',
  ['meter kind', 'hours from', 'which meter'],
]);
const day = 'As 2026-03-31';
const hours = 'Hours with a point, such as 1250.4; unknown where nobody knows';

/** The columns of each kind, in the template’s order. */
export const fleetFields: Record<FleetKind, readonly ImportField[]> = {
  fleet: [
    registration,
    open([
      'airframe',
      'airframe',
      'Maker and type; needed for a new aircraft',
      'Heronby Pinnace',
      ['aircraft type', 'type', 'aircraft maker and type'],
    ]),
    open([
      'engine',
      'engine',
      'Maker and type; needed for a new aircraft',
      'Brindle B-360',
      ['engine type', 'engine model'],
    ]),
    open([
      'position',
      'position',
      'single, left, right or center; single where nothing stands',
      'single',
      ['pos', 'side'],
    ]),
    open([
      'maker',
      'unit maker',
      'Needed where two makers have such a model',
      'Quillon',
      ['maker', 'manufacturer', 'make', 'propeller maker', 'governor maker'],
    ]),
    needed([
      'model',
      'model',
      'The unit’s designation, as among the models on record',
      'Q2C-74',
      ['part number', 'p/n', 'designation', 'propeller model', 'governor model', 'unit model'],
    ]),
    needed([
      'serial',
      'serial',
      'The unit’s own, as on its plate',
      'QA 4410',
      ['serial number', 's/n', 'unit serial', 'propeller serial'],
    ]),
    needed([
      'installedOn',
      'installed on',
      day,
      '2025-04-02',
      ['installed', 'installation date', 'date installed', 'fitted on'],
    ]),
    meter,
    open([
      'meterThen',
      'meter at installation',
      hours,
      '3480.2',
      ['meter then', 'hours at installation', 'installed at hours', 'tach at installation'],
    ]),
    open([
      'sinceNew',
      'time since new at installation',
      hours,
      '2210.5',
      ['tsn', 'time since new', 'tsn at installation', 'total time'],
    ]),
    open([
      'sinceOverhaul',
      'time since overhaul at installation',
      hours,
      '0.0',
      ['tso', 'time since overhaul', 'tso at installation', 'smoh', 'spoh'],
    ]),
    open([
      'overhauledOn',
      'last overhaul on',
      `${day}; never where it was not overhauled since new; unknown where nobody knows`,
      '2025-03-10',
      ['last overhaul', 'overhauled', 'overhaul date', 'date of last overhaul'],
    ]),
    open([
      'reading',
      'current reading',
      hours,
      '3911.5',
      ['current meter', 'hours now', 'meter now', 'current hours', 'reading'],
    ]),
    open([
      'readOn',
      'read on',
      `${day}; the day of the current reading`,
      '2026-11-20',
      ['reading date', 'date of reading', 'as of', 'current reading date'],
    ]),
  ],
  readings: [
    registration,
    needed(['readOn', 'date', day, '2026-11-20', ['read on', 'reading date', 'day']]),
    needed([
      'meter',
      'meter',
      'tachometer, hour meter or airframe for hours; landings or starts for cycles',
      'tachometer',
      ['meter kind', 'hours from', 'which meter'],
    ]),
    needed([
      'hours',
      'hours',
      'What the meter showed: hours with a point, or whole landings or starts',
      '3911.5',
      ['reading', 'it read', 'meter reading', 'hours now', 'cycles', 'landings', 'starts'],
    ]),
    open([
      'replacedOn',
      'meter replaced on',
      `${day}; only where the meter was replaced since its last reading`,
      '',
      ['replaced', 'new meter since', 'meter changed on'],
    ]),
    open([
      'oldMeter',
      'old meter showed last',
      `${hours}; with the day it was replaced`,
      '',
      ['old meter', 'last of old meter'],
    ]),
    open([
      'sure',
      'looked at again',
      'yes, where a reading is unlikely and right all the same',
      '',
      ['sure', 'checked', 'confirmed'],
    ]),
  ],
};
