import { measureOf } from '@hubwright/contracts/customers/operations';
import type { Operation } from '@hubwright/contracts/operation';
import { daysBetween } from '@hubwright/rules/dates';
import type { Context } from '../../platform/command/command.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { grouped } from '../../platform/database/grouped.ts';
import { faultWords, type MeterFacts, numberOn, type Replaced, type Said } from './meter-facts.ts';
import { figureWords } from './meter-figure.ts';

/** A reading as somebody says it, one of many. */
export interface SaidReading {
  readonly aircraftId: string;
  readonly meter: string;
  readonly on: string;
  readonly tenths: number;
  readonly replaced?: Replaced | undefined;
  /** It is unlikely, was looked at again and is right. */
  readonly sure: boolean;
}

export interface ReadingFault {
  readonly field: 'on' | 'tenths' | 'replaced' | 'sure';
  readonly kind: 'out-of-line' | 'unlikely';
  readonly detail: string;
}

export interface JudgedReading {
  readonly said: SaidReading;
  readonly faults: readonly ReadingFault[];
  /** On record already, word for word. */
  readonly same: boolean;
  readonly isNewChange: boolean;
}

/** More than this a day, on average since the last reading, is asked about: twelve hours, or sixty cycles. Common practice, no source. */
const unlikelyADay = { hours: 120, cycles: 60 };

/** Each reading held against what is on record and against the others of its meter. */
export function judgeReadings(facts: MeterFacts, all: readonly SaidReading[], today: string): JudgedReading[] {
  const byMeter = grouped(all, meterKey);
  return all.map((said) => {
    const others = (byMeter.get(meterKey(said)) ?? []).filter((one) => one !== said);
    return judged(facts, said, { others, today });
  });
}

const meterKey = ({ aircraftId, meter }: SaidReading) => `${aircraftId} ${meter}`;
const asSaid = ({ on, tenths }: SaidReading): Said => ({ on, tenths, as: 'reading', pointer: '' });

function judged(
  facts: MeterFacts,
  said: SaidReading,
  { others, today }: { others: readonly SaidReading[]; today: string },
): JudgedReading {
  const known = facts.on(said);
  const isKnownChange = (change: Replaced) => known.changes.some(({ on }) => on === change.on);
  const isNewChange = said.replaced !== undefined && !isKnownChange(said.replaced);
  const twin = known.readings.find(({ on, tenths }) => on === said.on && tenths === said.tenths);
  const same = twin?.struck === false && !isNewChange;
  const wrong = (field: ReadingFault['field'], detail: string, kind: ReadingFault['kind'] = 'out-of-line') => ({
    ...{ said, same: false, isNewChange },
    faults: [{ field, kind, detail }],
  });
  if (said.on > today) return wrong('on', `${said.on} is still to come`);
  if (said.replaced && said.replaced.on > said.on) return wrong('replaced', 'Replaced after this reading');
  if (twin?.struck) return wrong('tenths', 'This figure of this day was marked as a mistake before');
  if (same) return { said, same, isNewChange, faults: [] };
  const beside = {
    said: others.map(asSaid),
    changes: others.flatMap(({ replaced }) =>
      replaced && !isKnownChange(replaced) && replaced.on !== said.replaced?.on ? [replaced] : [],
    ),
  };
  const fault = facts.fault({ ...said, said: [asSaid(said)], change: isNewChange ? said.replaced : undefined, beside });
  if (fault) {
    const field = fault.said.what.endsWith('meter') ? 'replaced' : 'tenths';
    return wrong(
      field,
      `${faultWords(fault, said.meter)}. Read it again; where the meter was replaced, say on which day`,
    );
  }
  const doubt = said.sure
    ? undefined
    : unlikely(said, {
        ...known,
        changes: [...known.changes, ...(isNewChange && said.replaced ? [said.replaced] : [])],
      });
  return doubt ? wrong('sure', doubt, 'unlikely') : { said, same, isNewChange, faults: [] };
}

function unlikely({ on, tenths, meter }: SaidReading, known: ReturnType<MeterFacts['on']>): string | undefined {
  const no = numberOn(known.changes, on, 'reading');
  const before = known.readings
    .filter((one) => !one.struck && one.on <= on && numberOn(known.changes, one.on, 'reading') === no)
    .sort((a, b) => (a.on < b.on ? -1 : 1))
    .at(-1);
  if (!before) return undefined;
  const days = Math.max(1, daysBetween(before.on, on));
  const flown = tenths - before.tenths;
  const most = unlikelyADay[measureOf(meter)];
  if (flown <= most * days) return undefined;
  return `${figureWords(meter, flown)} in ${days} ${days === 1 ? 'day' : 'days'} since ${before.on}: more than ${measureOf(meter) === 'cycles' ? most : most / 10} a day. Say that it was looked at again where it is right`;
}

/** Readings, and the changes of meters named with them: two statements, however many. What is on record already is left out. */
export async function writeReadings(
  { tx, now, actor, newId }: Pick<Context<Operation>, 'tx' | 'now' | 'actor' | 'newId'>,
  judgedRows: readonly JudgedReading[],
  basis: string,
): Promise<void> {
  const changes = new Map(
    judgedRows.flatMap(({ said, isNewChange }) =>
      isNewChange && said.replaced
        ? [
            [
              `${meterKey(said)} ${said.replaced.on}`,
              { ...said.replaced, aircraftId: said.aircraftId, meter: said.meter },
            ],
          ]
        : [],
    ),
  );
  await tx.meterChange.createMany({
    data: [...changes.values()].map(({ on, oldTenths, newTenths, aircraftId, meter }) => ({
      ...{ id: newId(), aircraftId, meter, newTenths, basis },
      changedOn: toDbDate(on),
      oldTenths: oldTenths === 'unknown' ? null : oldTenths,
      recordedBy: actor.personId,
      recordedAt: now,
    })),
  });
  const readings = new Map(judgedRows.map(({ said }) => [`${meterKey(said)} ${said.on} ${said.tenths}`, said]));
  await addReadings({ tx, now, newId }, [...readings.values()]);
}

/** One statement however many, its rows sent as one value. What is on record already is left out. */
export async function addReadings(
  { tx, now, newId }: Pick<Context<Operation>, 'tx' | 'now' | 'newId'>,
  readings: readonly { aircraftId: string; meter: string; on: string; tenths: number }[],
): Promise<void> {
  const rows = readings.map(({ aircraftId, meter, on, tenths }) => ({ id: newId(), aircraftId, meter, on, tenths }));
  await tx.$executeRaw`
    INSERT INTO aircraft_readings (id, aircraft_id, meter, hours_tenths, read_on, recorded_at)
    SELECT id, "aircraftId", meter, tenths, "on", ${now}
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb)
      AS n(id uuid, "aircraftId" uuid, meter text, tenths int, "on" date)
    ON CONFLICT DO NOTHING`;
}
