import { Problem } from '@hubwright/contracts/problems';
import { type MeterPoint, type OutOfLine, outOfLine } from '@hubwright/rules/times';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';

/** A figure said now. A reading or an installation on the day of a change is the new meter's, a removal the old one's. */
export interface Said {
  readonly on: string;
  readonly tenths: number | 'unknown';
  readonly as: 'reading' | 'installation' | 'removal';
  readonly pointer: string;
}

interface ChangeOfMeter {
  readonly on: string;
  readonly oldTenths: number | 'unknown';
  readonly newTenths: number;
  readonly isNew: boolean;
}

interface Check {
  readonly aircraftId: string;
  readonly meter: string;
  readonly said: readonly Said[];
  /** A change recorded now. */
  readonly change?: Omit<ChangeOfMeter, 'isNew'>;
  /** The interval that what is said takes the place of. */
  readonly insteadOf?: string;
}

/** Refuses figures that this meter of this aircraft cannot have shown, by every reading, installation and change on record. */
export async function refuseOutOfLine(tx: Tx, check: Check): Promise<void> {
  const changes = await changesOf(tx, check);
  const points = [...(await onRecord(tx, check, changes)), ...saidNow(check, changes), ...ofChanges(changes)];
  const fault = outOfLine(points);
  if (!fault) return;
  const detail = inWords(fault);
  throw new Problem('reading-out-of-line', detail, {}, [{ pointer: pointerOf(fault.said, check), detail }]);
}

/** What a meter will show nobody has read. */
export function refuseFuture(day: string, today: string, pointer: string): void {
  if (day <= today) return;
  const detail = `${day} is still to come`;
  throw new Problem('reading-out-of-line', detail, {}, [{ pointer, detail }]);
}

async function changesOf(tx: Tx, { aircraftId, meter, change }: Check): Promise<ChangeOfMeter[]> {
  const rows = await tx.meterChange.findMany({ where: { aircraftId, meter, supersededBy: null, withdrawn: false } });
  const known = rows.map((row) => ({
    on: fromDbDate(row.changedOn),
    oldTenths: row.oldTenths ?? ('unknown' as const),
    newTenths: row.newTenths,
    isNew: false,
  }));
  return [...known, ...(change ? [{ ...change, isNew: true }] : [])].sort((a, b) => (a.on < b.on ? -1 : 1));
}

function numberOn(changes: readonly ChangeOfMeter[], on: string, as: Said['as']): number {
  return 1 + changes.filter((change) => (as === 'removal' ? change.on < on : change.on <= on)).length;
}

async function onRecord(
  tx: Tx,
  { aircraftId, meter, insteadOf }: Check,
  changes: readonly ChangeOfMeter[],
): Promise<MeterPoint[]> {
  const readings = await tx.aircraftReading.findMany({ where: { aircraftId, meter, struck: null } });
  const intervals = await tx.aircraftInterval.findMany({
    where: { aircraftId, meter, supersededBy: null, withdrawn: false, NOT: { intervalId: insteadOf ?? aircraftId } },
  });
  const point = (day: Date | null, tenths: number | null, [what, as]: [string, Said['as']]): MeterPoint[] => {
    if (day === null || tenths === null) return [];
    const on = fromDbDate(day);
    return [{ on, tenths, what, no: numberOn(changes, on, as), isNew: false }];
  };
  return [
    ...readings.flatMap((row) => point(row.readOn, row.hoursTenths, ['a reading', 'reading'])),
    ...intervals.flatMap((row) => [
      ...point(row.fromDate, row.fromTenths, ['an installation', 'installation']),
      ...point(row.toDate, row.toTenths, ['a removal', 'removal']),
    ]),
  ];
}

function saidNow({ said }: Check, changes: readonly ChangeOfMeter[]): MeterPoint[] {
  return said.flatMap(({ on, tenths, as }) =>
    tenths === 'unknown' ? [] : [{ on, tenths, what: 'what is said now', no: numberOn(changes, on, as), isNew: true }],
  );
}

function ofChanges(changes: readonly ChangeOfMeter[]): MeterPoint[] {
  return changes.flatMap(({ on, oldTenths, newTenths, isNew }, i) => [
    ...(oldTenths === 'unknown' ? [] : [{ on, tenths: oldTenths, what: 'the old meter', no: i + 1, isNew }]),
    { on, tenths: newTenths, what: 'the new meter', no: i + 2, isNew },
  ]);
}

function pointerOf({ on, tenths, what }: MeterPoint, { said }: Check): string {
  if (what === 'the old meter') return '/oldTenths';
  if (what === 'the new meter') return '/newTenths';
  return said.find((one) => one.on === on && one.tenths === tenths)?.pointer ?? '';
}

function inWords({ fault, earlier, later }: OutOfLine): string {
  const figure = ({ on, tenths, what, isNew }: MeterPoint) =>
    `${(tenths / 10).toFixed(1)} h on ${on}${isNew ? '' : ` (${what})`}`;
  return fault === 'backwards'
    ? `The meter would run backwards: ${figure(earlier)}, then ${figure(later)}`
    : `More than 24 hours a day between ${figure(earlier)} and ${figure(later)}`;
}
