import { faultWords, type Said } from '../customers/public.ts';
import type { FleetCells } from './fleet-cells.ts';
import type { FleetFacts } from './fleet-facts.ts';
import type { NamedAircraft, NamedUnit, StandingInterval } from './shapes.ts';

/** A row that is read as far as its place goes. */
export interface Placed {
  readonly row: FleetCells & { readonly installedOn: string };
  readonly aircraft: NamedAircraft;
  readonly unit: NamedUnit;
  readonly kind: string;
}

/** The installation a row speaks of, where one is on record already: it still sits at this position of this aircraft. */
export function standingOf({ row, aircraft, unit }: Placed, facts: FleetFacts): StandingInterval | undefined {
  const open = (facts.byItem.get(unit.id ?? '') ?? []).find(({ to }) => to === null);
  return open && open.aircraftId === aircraft.id && open.position === row.position ? open : undefined;
}

/** Names what cannot be: the unit in two places, two units in one, or in the shop at the same time. */
export function judgePlace(placed: Placed, facts: FleetFacts, was: StandingInterval | undefined): void {
  const { row, aircraft, unit, kind } = placed;
  const { cells, installedOn, position } = row;
  const since = ({ from, to }: StandingInterval) => `${from}${to ? ` to ${to}` : ''}`;
  const isLater = (one: StandingInterval) => one.id !== was?.id && (one.to === null || one.to > installedOn);
  const elsewhere = (facts.byItem.get(unit.id ?? '') ?? []).find(isLater);
  if (elsewhere)
    cells.wrong(
      elsewhere.to === null ? 'serial' : 'installedOn',
      `It is on record at ${elsewhere.position} of ${elsewhere.registration} since ${since(elsewhere)}: record its removal there first, or correct the row`,
    );
  const other = (facts.byAircraft.get(aircraft.id ?? '') ?? []).find(
    (one) => isLater(one) && one.itemId !== unit.id && one.position === position && one.kind === kind,
  );
  if (other)
    cells.wrong(
      'position',
      `${other.item} is on record there since ${since(other)}: record its removal first, or correct the position`,
    );
  const visit = (facts.visits.get(unit.id ?? '') ?? []).find(({ leftOn }) => leftOn === null || leftOn > installedOn);
  if (visit?.leftOn === null)
    cells.wrong('serial', `It is in the shop on ${visit.number} since ${visit.receivedOn}: take the row out`);
  else if (visit)
    cells.wrong(
      'installedOn',
      `It was in the shop on ${visit.number} until ${visit.leftOn}: it was installed after that`,
    );
}

/** The figures of a meter in a row. */
export function figuresOf({ installedOn, meterThen, reading, readOn }: FleetCells): Said[] {
  const said = (on: string | undefined, tenths: number | 'unknown', as: Said['as']): Said[] =>
    on === undefined || tenths === 'unknown' ? [] : [{ on, tenths, as, pointer: as }];
  return [...said(installedOn, meterThen, 'installation'), ...said(readOn, reading, 'reading')];
}

/** Names a figure that the meter cannot have shown, by what is on record and what other rows say of the same meter. */
export function judgeFigures(
  { row, aircraft }: Placed,
  facts: FleetFacts,
  { was, others }: { was: StandingInterval | undefined; others: readonly Said[] },
): void {
  const { cells, meter, reading, readOn } = row;
  if (meter === undefined || cells.errors.some(({ field }) => field === 'installedOn' || field === 'readOn')) return;
  const of = { aircraftId: aircraft.id ?? '', meter };
  if (facts.meters.on(of).readings.some(({ on, tenths, struck }) => struck && on === readOn && tenths === reading))
    cells.wrong('reading', 'This figure of this day was marked as a mistake before: leave it out');
  const said = figuresOf(row);
  const fault = facts.meters.fault({
    ...{ ...of, said, insteadOf: was?.intervalId },
    beside: { said: others, changes: [] },
  });
  if (!fault) return;
  const ofReading = [fault.said, fault.later].some(({ on, tenths }) => on === readOn && tenths === reading);
  cells.wrong(
    ofReading ? 'reading' : 'meterThen',
    `${faultWords(fault, meter)}: correct the figure; where the meter was replaced, record that first`,
  );
}
