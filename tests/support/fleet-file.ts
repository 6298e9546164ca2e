import { addDays, addMonths } from '@hubwright/rules/dates';

/** One aircraft with its propeller, as a customer's table says it; hours in tenths. */
export interface FleetAircraft {
  readonly registration: string;
  readonly serial: string;
  readonly overhauledOn: string;
  readonly installedOn: string;
  readonly meterThen: number;
  readonly sinceNew: number;
  readonly sinceOverhaul: number;
  readonly reading: number;
  readonly readOn: string;
}

/** Headings as a customer writes them, none of them ours word for word. */
export const fleetHead =
  'Tail,Aircraft type,Engine type,Prop,Serial no,Fitted on,Hours from,Hours at installation,TSN,TSO,Date of last overhaul,Hours now,As of';

/** A training fleet: each propeller overhauled a fortnight before it was installed, some flown since its overhaul already. */
export function trainingFleet(count: number, today: string): FleetAircraft[] {
  return Array.from({ length: count }, (_, i) => {
    const overhauledOn = addMonths(today, -(6 + i));
    const flown = 500 + 37 * i;
    return {
      registration: `ZZ-T${String(i + 1).padStart(2, '0')}`,
      serial: `TF${String(i + 1).padStart(3, '0')}`,
      ...{ overhauledOn, installedOn: addDays(overhauledOn, 14) },
      ...{ meterThen: 10_000 + 113 * i, sinceNew: 20_000 + 71 * i, sinceOverhaul: i % 5 },
      ...{ reading: 10_000 + 113 * i + flown, readOn: addDays(today, -10) },
    };
  });
}

const hours = (tenths: number) => (tenths / 10).toFixed(1);

/** The customer's file; `broken` puts something else into the cells of a row, by its place in the fleet. */
export function fleetFile(
  fleet: readonly FleetAircraft[],
  broken: Record<number, Record<string, string>> = {},
): string {
  const lines = fleet.map((one, at) => {
    const cells: Record<string, string> = {
      tail: one.registration,
      ...{ type: 'Heronby Courser 4', engine: 'Brindle B-540', prop: 'Q3C-76', serial: one.serial },
      ...{ fitted: one.installedOn, meter: 'tachometer', meterThen: hours(one.meterThen) },
      ...{ tsn: hours(one.sinceNew), tso: hours(one.sinceOverhaul), overhauled: one.overhauledOn },
      ...{ now: hours(one.reading), asOf: one.readOn },
      ...broken[at],
    };
    return Object.values(cells).join(',');
  });
  return [fleetHead, ...lines].join('\r\n');
}
