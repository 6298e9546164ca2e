import { measureOf } from '@hubwright/contracts/customers/operations';
import { type MeterPoint, type OutOfLine, outOfLine } from '@hubwright/rules/times';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { figureWords } from './meter-figure.ts';

type Models = Pick<Reads['models'], 'aircraftInterval' | 'aircraftReading' | 'meterChange'>;

/** A figure said now. A reading or an installation on the day of a change is the new meter's, a removal the old one's. */
export interface Said {
  readonly on: string;
  readonly tenths: number | 'unknown';
  readonly as: 'reading' | 'installation' | 'removal';
  readonly pointer: string;
}

/** A meter was replaced. */
export interface Replaced {
  readonly on: string;
  readonly oldTenths: number | 'unknown';
  readonly newTenths: number;
}

interface OnRecord {
  readonly changes: Replaced[];
  readonly readings: { readonly on: string; readonly tenths: number; readonly struck: boolean }[];
  readonly intervals: {
    readonly intervalId: string;
    readonly from: string;
    readonly fromTenths: number | null;
    readonly to: string | null;
    readonly toTenths: number | null;
  }[];
}

/** What is said of one meter, to be held against what is on record. */
export interface Statement {
  readonly aircraftId: string;
  readonly meter: string;
  readonly said: readonly Said[];
  /** A change recorded now. */
  readonly change?: Replaced | undefined;
  /** What else is said in the same breath: it counts like what is on record. */
  readonly beside?: { readonly said: readonly Said[]; readonly changes: readonly Replaced[] };
  /** The interval that what is said takes the place of. */
  readonly insteadOf?: string | undefined;
}

/** Everything that says what the meters of some aircraft showed: three statements, however many they are. */
export class MeterFacts {
  private constructor(private readonly byMeter: ReadonlyMap<string, OnRecord>) {}

  static async of(models: Models, aircraftIds: readonly string[]): Promise<MeterFacts> {
    const where = { aircraftId: { in: [...new Set(aircraftIds)] } };
    const stands = { ...where, supersededBy: null, withdrawn: false };
    const changes = await models.meterChange.findMany({ where: stands, orderBy: { changedOn: 'asc' } });
    const readings = await models.aircraftReading.findMany({
      where,
      include: { struck: { select: { readingId: true } } },
    });
    const intervals = await models.aircraftInterval.findMany({ where: stands });
    const byMeter = new Map<string, OnRecord>();
    const of = ({ aircraftId, meter }: { aircraftId: string; meter: string }) => {
      const facts = byMeter.get(`${aircraftId} ${meter}`) ?? { changes: [], readings: [], intervals: [] };
      byMeter.set(`${aircraftId} ${meter}`, facts);
      return facts;
    };
    for (const row of changes)
      of(row).changes.push({
        on: fromDbDate(row.changedOn),
        oldTenths: row.oldTenths ?? 'unknown',
        newTenths: row.newTenths,
      });
    for (const row of readings)
      of(row).readings.push({ on: fromDbDate(row.readOn), tenths: row.hoursTenths, struck: row.struck !== null });
    for (const { intervalId, aircraftId, meter, cyclesMeter, ...row } of intervals) {
      const days = { intervalId, from: fromDbDate(row.fromDate), to: row.toDate && fromDbDate(row.toDate) };
      of({ aircraftId, meter }).intervals.push({ ...days, fromTenths: row.fromTenths, toTenths: row.toTenths });
      if (cyclesMeter === null) continue;
      const counted = { fromTenths: row.fromCycles, toTenths: row.toCycles };
      of({ aircraftId, meter: cyclesMeter }).intervals.push({ ...days, ...counted });
    }
    return new MeterFacts(byMeter);
  }

  on(meter: { readonly aircraftId: string; readonly meter: string }): OnRecord {
    return this.byMeter.get(`${meter.aircraftId} ${meter.meter}`) ?? { changes: [], readings: [], intervals: [] };
  }

  /** What this meter cannot have shown of what is said now, or undefined. */
  fault(statement: Statement): OutOfLine | undefined {
    const { said, beside } = statement;
    const facts = this.on(statement);
    const known = [...facts.changes, ...(beside?.changes ?? [])].map((change) => ({ ...change, isNew: false }));
    const changes = [...known, ...(statement.change ? [{ ...statement.change, isNew: true }] : [])].sort((a, b) =>
      a.on < b.on ? -1 : 1,
    );
    return outOfLine([
      ...recorded(facts, changes, statement.insteadOf),
      ...stated(beside?.said ?? [], changes, false),
      ...stated(said, changes, true),
      ...ofChanges(changes),
    ]);
  }
}

type Dated = readonly { readonly on: string }[];

/** Which meter of its kind a figure of that day is: 1 for the first, one more for each that replaced another. */
export function numberOn(changes: Dated, on: string, as: Said['as']): number {
  return 1 + changes.filter((change) => (as === 'removal' ? change.on < on : change.on <= on)).length;
}

function recorded({ readings, intervals }: OnRecord, changes: Dated, insteadOf: string | undefined): MeterPoint[] {
  const point = (on: string | null, tenths: number | null, [what, as]: [string, Said['as']]): MeterPoint[] =>
    on === null || tenths === null ? [] : [{ on, tenths, what, no: numberOn(changes, on, as), isNew: false }];
  return [
    ...readings.flatMap(({ on, tenths, struck }) => (struck ? [] : point(on, tenths, ['a reading', 'reading']))),
    ...intervals.flatMap((row) =>
      row.intervalId === insteadOf
        ? []
        : [
            ...point(row.from, row.fromTenths, ['an installation', 'installation']),
            ...point(row.to, row.toTenths, ['a removal', 'removal']),
          ],
    ),
  ];
}

function stated(said: readonly Said[], changes: Dated, isNew: boolean): MeterPoint[] {
  const what = isNew ? 'what is said now' : 'another row';
  return said.flatMap(({ on, tenths, as }) =>
    tenths === 'unknown' ? [] : [{ on, tenths, what, no: numberOn(changes, on, as), isNew }],
  );
}

function ofChanges(changes: readonly (Replaced & { isNew: boolean })[]): MeterPoint[] {
  return changes.flatMap(({ on, oldTenths, newTenths, isNew }, i) => [
    ...(oldTenths === 'unknown' ? [] : [{ on, tenths: oldTenths, what: 'the old meter', no: i + 1, isNew }]),
    { on, tenths: newTenths, what: 'the new meter', no: i + 2, isNew },
  ]);
}

/** The fault in a sentence, with both figures and where each comes from. */
export function faultWords({ fault, earlier, later }: OutOfLine, meter: string): string {
  const figure = ({ on, tenths, what, isNew }: MeterPoint) =>
    `${figureWords(meter, tenths)} on ${on}${isNew ? '' : ` (${what})`}`;
  return fault === 'backwards'
    ? `The meter would run backwards: ${figure(earlier)}, then ${figure(later)}`
    : `More than ${measureOf(meter) === 'cycles' ? '240 cycles' : '24 hours'} a day between ${figure(earlier)} and ${figure(later)}`;
}
