import type { Reply } from '@hubwright/contracts/operation';
import type { unitOperations } from '@hubwright/contracts/units/operations';
import { normaliseSerial } from '@hubwright/rules/identity';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { SerializedItem, TimeRecord } from '../../platform/database/generated/client.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { latestTimes, TimesOnRecord } from '../units/public.ts';

type Joining = Reply<typeof unitOperations.joinIdentity>['joining'];

/** The part on record, what becomes of both records, and why it cannot be done now. */
export interface JoinPlan {
  readonly known: SerializedItem;
  /** Readings taken before the serial was read that count for the part on record. */
  readonly carried: readonly TimeRecord[];
  readonly refused: string | null;
  readonly joining: Joining;
}

/** What saying “this is that part” would do; undefined when no other part on record has the serial. Reads only. */
export async function planJoin(tx: Tx, item: SerializedItem, serialRead: string): Promise<JoinPlan | undefined> {
  const serial = normaliseSerial(serialRead);
  const { maker, partNumber } = item;
  const known = await tx.serializedItem.findUnique({
    where: { maker_partNumber_serial: { maker, partNumber, serial } },
  });
  if (!known || known.id === item.id) return undefined;
  const onRecord = await latestTimes(tx, known.id);
  const readings = await tx.timeRecord.findMany({ where: { itemId: item.id }, orderBy: { recordedOn: 'asc' } });
  const times = await TimesOnRecord.of(tx, [known.id]);
  const carried = readings.filter((reading) => isNewer(reading, onRecord, times));
  const counts = carried.at(-1) ?? onRecord;
  return {
    known,
    carried,
    refused: await refusal(tx, item, known),
    joining: {
      known: { id: known.id, kind: known.kind as Joining['known']['kind'], partNumber, serial },
      times: counts && {
        recordedOn: fromDbDate(counts.recordedOn),
        sinceNewTenths: counts.sinceNewTenths ?? 'unknown',
        sinceOverhaulTenths: counts.sinceOverhaulTenths ?? 'unknown',
        basis: counts.basis,
      },
      timesFrom: carried.length > 0 ? 'reading' : 'record',
      effects: [...(await placesLeft(tx, item, known)), ...readings.flatMap((one) => setAside(one, carried, onRecord))],
    },
  };
}

/** The same for a view. Nothing is written on this way, so the read-only models serve as well. */
export async function planForView(models: Reads['models'], itemId: string, serial: string) {
  const item = found(await models.serializedItem.findUnique({ where: { id: itemId } }), 'This part');
  return planJoin(models as unknown as Tx, item, serial);
}

/** A reading that knows hours, is not older than the record and says no less than what the other had by its day. */
function isNewer(reading: TimeRecord, onRecord: TimeRecord | null, times: TimesOnRecord): boolean {
  if (reading.sinceNewTenths === null) return false;
  if (!onRecord) return true;
  const { atLeastTenths } = times.on(onRecord.itemId, fromDbDate(reading.recordedOn)).sinceNew;
  return reading.recordedOn >= onRecord.recordedOn && reading.sinceNewTenths >= atLeastTenths;
}

/** Two parts cannot have one identity: the one on record must not be in anybody's hands. */
async function refusal(tx: Tx, item: SerializedItem, known: SerializedItem): Promise<string | null> {
  if (known.kind !== item.kind) return `The part on record is a ${known.kind}, this is a ${item.kind}`;
  const busy = await tx.workOrder.findFirst({
    where: {
      closedAt: null,
      OR: [
        { unitId: known.id },
        { unit: { parts: { some: { itemId: known.id, toDate: null } } } },
        { travelers: { some: { itemId: known.id } } },
      ],
    },
    select: { number: true },
  });
  return busy && `${known.partNumber} serial ${known.serial} is on ${busy.number}, which is not closed`;
}

async function placesLeft(tx: Tx, item: SerializedItem, known: SerializedItem): Promise<string[]> {
  const here = await tx.installation.findFirst({ where: { itemId: item.id, toDate: null } });
  const elsewhere = await tx.installation.findFirst({
    where: { itemId: known.id, toDate: null },
    include: { parent: { select: { partNumber: true, serial: true, provisionalName: true } } },
  });
  const parts = await tx.installation.findMany({
    where: { parentId: known.id, toDate: null },
    orderBy: { position: 'asc' },
    include: { item: { select: { partNumber: true, serial: true, provisionalName: true } } },
  });
  const name = (one: { partNumber: string; serial: string | null; provisionalName: string | null }) =>
    `${one.partNumber} ${one.serial ?? one.provisionalName ?? ''}`.trim();
  return [
    ...(here && elsewhere ? [`It leaves ${elsewhere.position} of ${name(elsewhere.parent)}.`] : []),
    ...(item.kind === 'assembly'
      ? parts.map((part) => `${name(part.item)} was last in it at ${part.position} and is not any more.`)
      : []),
  ];
}

function setAside(reading: TimeRecord, carried: readonly TimeRecord[], onRecord: TimeRecord | null): string[] {
  if (carried.includes(reading) || reading.sinceNewTenths === null || !onRecord) return [];
  const said = `${reading.sinceNewTenths / 10} h since new of ${fromDbDate(reading.recordedOn)} (${reading.basis})`;
  const stands = onRecord.sinceNewTenths === null ? 'unknown hours' : `${onRecord.sinceNewTenths / 10} h`;
  return [`${said} does not count: the record says ${stands} on ${fromDbDate(onRecord.recordedOn)}.`];
}
