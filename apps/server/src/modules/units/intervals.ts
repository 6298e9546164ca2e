import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { RuleError } from '@hubwright/rules/errors';
import { itemTimes } from '@hubwright/rules/times';
import type { Context } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import type { AircraftInterval } from '../../platform/database/generated/client.ts';
import { refuseFuture, refuseOutOfLine, type Said } from '../customers/public.ts';
import { timeFacts, timesInput } from './time-facts.ts';

type Writing = Pick<Context<Operation>, 'tx' | 'now' | 'today' | 'actor' | 'newId'>;
type Tenths = number | 'unknown';

/** An installation on an aircraft as somebody says it was. */
export interface Stated {
  readonly itemId: string;
  readonly aircraftId: string;
  readonly position: string;
  readonly meter: string;
  readonly from: string;
  readonly fromTenths: Tenths;
  readonly to?: string | undefined;
  readonly toTenths?: Tenths | undefined;
  readonly cycles?: { readonly meter: string; readonly from: Tenths; readonly to?: Tenths | undefined } | undefined;
}

/** How the interval stands: the row that nothing supersedes. */
export async function standing(tx: Tx, intervalId: string): Promise<AircraftInterval> {
  const row = found(
    await tx.aircraftInterval.findFirst({ where: { intervalId, supersededBy: null } }),
    'This installation',
  );
  if (row.withdrawn) throw new Problem('interval-superseded', `It was withdrawn: ${row.basis}`);
  return row;
}

/** What a command on an interval decides on. */
export async function intervalLocks(tx: Tx, intervalId: string): Promise<string[]> {
  const row = await tx.aircraftInterval.findFirst({ where: { intervalId } });
  return row ? [`item:${row.itemId}`, `aircraft:${row.aircraftId}`] : [];
}

/** The row as it stands, as something stated again. */
export function restated(row: AircraftInterval): Stated {
  return {
    ...{ itemId: row.itemId, aircraftId: row.aircraftId, position: row.position, meter: row.meter },
    from: fromDbDate(row.fromDate),
    fromTenths: row.fromTenths ?? 'unknown',
    ...(row.toDate ? { to: fromDbDate(row.toDate), toTenths: row.toTenths ?? 'unknown' } : {}),
    cycles: cyclesOf(row),
  };
}

function cyclesOf(row: AircraftInterval): Stated['cycles'] {
  if (row.cyclesMeter === null) return undefined;
  const end = row.toDate ? { to: row.toCycles ?? ('unknown' as const) } : {};
  return { meter: row.cyclesMeter, from: row.fromCycles ?? 'unknown', ...end };
}

/** Adds a row; one that stood before is superseded by it. */
export async function writeInterval(
  { tx, now, actor, newId }: Pick<Writing, 'tx' | 'now' | 'actor' | 'newId'>,
  stated: Stated,
  how: { basis: string; supersedes?: AircraftInterval; withdrawn?: boolean },
): Promise<{ id: string; intervalId: string }> {
  const id = newId();
  const { itemId, aircraftId, position, meter, from, fromTenths, to, toTenths, cycles } = stated;
  const known = (tenths: Tenths | undefined) => (typeof tenths === 'number' ? tenths : null);
  const intervalId = how.supersedes?.intervalId ?? id;
  await tx.aircraftInterval.create({
    data: {
      ...{ id, intervalId, itemId, aircraftId, position, meter },
      supersedesId: how.supersedes?.id ?? null,
      fromDate: toDbDate(from),
      fromTenths: known(fromTenths),
      toDate: to === undefined ? null : toDbDate(to),
      toTenths: to === undefined ? null : known(toTenths),
      ...{ cyclesMeter: cycles?.meter ?? null, fromCycles: known(cycles?.from) },
      toCycles: to === undefined ? null : known(cycles?.to),
      withdrawn: how.withdrawn ?? false,
      basis: how.basis,
      recordedBy: actor.personId,
      recordedAt: now,
    },
  });
  return { id, intervalId };
}

/** Refuses what cannot be: days to come, two places at once, figures the meter cannot have shown, flying while it was in the shop. */
export async function refuseImpossible(context: Writing, stated: Stated, insteadOf?: AircraftInterval): Promise<void> {
  const { tx, today } = context;
  const { from, to, toTenths } = stated;
  refuseFuture(from, today, '/from');
  if (to !== undefined) refuseFuture(to, today, '/to');
  if ((to === undefined) !== (toTenths === undefined))
    throw invalid('/toTenths', 'A removal has a day and what the meter showed, or “unknown”');
  if (to !== undefined && to < from) throw invalid('/to', 'It was removed before it was installed');
  if (to === undefined && stated.cycles?.to !== undefined)
    throw invalid('/cycles/to', 'What the meter showed at the removal, without a removal');
  await refuseTwoPlaces(tx, stated, insteadOf);
  for (const figures of figuresOf(stated)) await refuseFigures(tx, { stated, ...figures, insteadOf });
}

interface Figures {
  readonly meter: string;
  readonly from: Tenths;
  readonly to: Tenths;
  readonly pointers: { readonly from: string; readonly to: string };
}

/** What each of its meters showed at both ends: that of its hours, and that of its cycles where one was read. */
function figuresOf({ meter, fromTenths, toTenths, cycles }: Stated): Figures[] {
  const hours = { meter, from: fromTenths, to: toTenths ?? ('unknown' as const) };
  return [
    { ...hours, pointers: { from: '/fromTenths', to: '/toTenths' } },
    ...(cycles
      ? [{ ...cycles, to: cycles.to ?? ('unknown' as const), pointers: { from: '/cycles/from', to: '/cycles/to' } }]
      : []),
  ];
}

async function refuseFigures(
  tx: Tx,
  given: Figures & { readonly stated: Stated; readonly insteadOf: AircraftInterval | undefined },
): Promise<void> {
  const { meter, from, to, pointers, stated, insteadOf } = given;
  const { aircraftId } = stated;
  const isLess = typeof to === 'number' && typeof from === 'number' && to < from;
  if (isLess && !(await changed(tx, { ...stated, meter })))
    throw invalid(
      pointers.to,
      'Removed at less than it was installed at; if the meter was replaced, record that first',
    );
  const said: Said[] = [
    { on: stated.from, tenths: from, as: 'installation', pointer: pointers.from },
    ...(stated.to === undefined ? [] : [{ on: stated.to, tenths: to, as: 'removal' as const, pointer: pointers.to }]),
  ];
  await refuseOutOfLine(tx, { aircraftId, meter, said, ...(insteadOf ? { insteadOf: insteadOf.intervalId } : {}) });
}

async function changed(tx: Tx, { aircraftId, meter, from, to }: Stated): Promise<boolean> {
  const where = { aircraftId, meter, withdrawn: false, supersededBy: null };
  const changedOn = { gt: toDbDate(from), lt: toDbDate(to ?? from) };
  return (await tx.meterChange.findFirst({ where: { ...where, changedOn } })) !== null;
}

function invalid(pointer: string, detail: string): Problem {
  return new Problem('invalid-input', detail, {}, [{ pointer, detail }]);
}

async function refuseTwoPlaces(tx: Tx, stated: Stated, insteadOf: AircraftInterval | undefined): Promise<void> {
  const { itemId, aircraftId, position, from } = stated;
  const item = found(
    await tx.serializedItem.findUnique({ where: { id: itemId }, include: { model: true } }),
    'This unit',
  );
  const rows = await tx.aircraftInterval.findMany({
    where: {
      ...{ supersededBy: null, withdrawn: false },
      OR: [{ itemId }, { aircraftId, position, item: { model: { kind: item.model?.kind ?? '' } } }],
      NOT: { intervalId: insteadOf?.intervalId ?? itemId },
    },
    include: { aircraft: true, item: true },
  });
  const other = rows.find((row) =>
    overlaps(stated, { from: fromDbDate(row.fromDate), to: row.toDate && fromDbDate(row.toDate) }),
  );
  if (other) {
    const since = `since ${fromDbDate(other.fromDate)}${other.toDate ? ` to ${fromDbDate(other.toDate)}` : ''}`;
    const place = `${other.position} of ${other.aircraft.registration}`;
    if (other.itemId === itemId) throw new Problem('installed-elsewhere', `It is on record at ${place} ${since}`);
    throw new Problem(
      'position-taken',
      `${other.item.partNumber} ${other.item.serial} is on record at ${place} ${since}`,
    );
  }
  const visit = ((await timeFacts(tx, [itemId])).visits.get(itemId) ?? []).find(({ receivedOn, leftOn }) =>
    overlaps(stated, { from: receivedOn, to: leftOn }),
  );
  if (!visit) return;
  const detail = `It was in the shop on ${visit.number} from ${visit.receivedOn} ${visit.leftOn ? `to ${visit.leftOn}` : 'on'}`;
  throw new Problem('installed-elsewhere', detail, {}, [
    { pointer: from < visit.receivedOn ? '/to' : '/from', detail },
  ]);
}

/** Half-open: what ends on a day leaves that day to what begins on it. */
function overlaps(a: { from: string; to?: string | undefined }, b: { from: string; to: string | null }): boolean {
  return (b.to === null || a.from < b.to) && (a.to === undefined || a.to > b.from);
}

/** Runs the computation over what was just written; what it cannot make sense of is taken back with the reason. */
export async function refuseNonsense({ tx, today }: Writing, itemId: string): Promise<void> {
  const facts = await timeFacts(tx, [itemId]);
  try {
    for (const measure of ['hours', 'cycles'] as const) itemTimes(timesInput(facts, itemId, { asOf: today, measure }));
  } catch (error) {
    if (error instanceof RuleError) throw new Problem('interval-impossible', error.message);
    throw error;
  }
}

/** A unit that comes in is on no aircraft any more: its open interval ends that day with what the meter is said to have shown. */
export async function endOnArrival(
  context: Writing,
  itemId: string,
  arrival: { on: string; meter: string | null; meterTenths: number | null; number: string },
): Promise<void> {
  const { tx } = context;
  const row = await tx.aircraftInterval.findFirst({
    where: { itemId, supersededBy: null, withdrawn: false, toDate: null },
  });
  if (!row) return;
  const toTenths = arrival.meter === row.meter ? (arrival.meterTenths ?? 'unknown') : 'unknown';
  const { aircraftId, meter, from } = { ...row, from: fromDbDate(row.fromDate) };
  if (arrival.on < from)
    throw new Problem('installed-elsewhere', `It is on record as installed on ${from}`, {}, [
      { pointer: '/receivedOn', detail: `Installed on an aircraft on ${from}` },
    ]);
  const said: Said = { on: arrival.on, tenths: toTenths, as: 'removal', pointer: '/times/meterTenths' };
  await refuseOutOfLine(tx, { aircraftId, meter, said: [said], insteadOf: row.intervalId });
  if (
    typeof toTenths === 'number' &&
    toTenths < (row.fromTenths ?? 0) &&
    !(await changed(tx, { ...restated(row), to: arrival.on }))
  )
    throw new Problem('reading-out-of-line', 'Less than the meter showed at installation', {}, [
      { pointer: '/times/meterTenths', detail: `Installed at ${((row.fromTenths ?? 0) / 10).toFixed(1)} h` },
    ]);
  await writeInterval(
    context,
    { ...restated(row), to: arrival.on, toTenths },
    { basis: `came in on ${arrival.number}`, supersedes: row },
  );
}
