import type { Meter } from '@hubwright/contracts/customers/operations';
import type { PartClass } from '@hubwright/contracts/manuals/words';
import { fromDbDate } from '../../platform/database/dates.ts';
import { restsOn, type TimesOnRecord } from '../units/public.ts';

interface TimesRow {
  readonly recordedOn: Date;
  readonly sinceNewTenths: number | null;
  readonly sinceOverhaulTenths: number | null;
  readonly sinceNewCycles: number | null;
  readonly meter: string | null;
  readonly meterTenths: number | null;
  readonly basis: string;
}

/** Times on record as the contract says them: null is the word unknown. */
export function timesOf(row: TimesRow) {
  return {
    recordedOn: fromDbDate(row.recordedOn),
    sinceNewTenths: row.sinceNewTenths ?? ('unknown' as const),
    sinceOverhaulTenths: row.sinceOverhaulTenths ?? ('unknown' as const),
    sinceNewCycles: row.sinceNewCycles ?? ('unknown' as const),
    meter: row.meter as Meter | null,
    meterTenths: row.meterTenths,
    basis: row.basis,
  };
}

/** Times of a part computed for a day, in the same words; null where no paper and no flying says anything. */
export function timesAt(flown: TimesOnRecord, { itemId, today }: { itemId: string; today: string }) {
  const hours = flown.on(itemId, today);
  const { sinceNew, sinceOverhaul } = hours;
  if (sinceNew.start === null && sinceOverhaul.start === null && sinceNew.atLeastTenths === 0) return null;
  return {
    recordedOn: today,
    sinceNewTenths: sinceNew.tenths,
    sinceOverhaulTenths: sinceOverhaul.tenths,
    sinceNewCycles: flown.on(itemId, today, 'cycles').sinceNew.tenths,
    ...{ meter: null, meterTenths: null, basis: hours.contradiction ?? restsOn(sinceNew) },
  };
}

/** What to read with an installed part: the part and its newest times. */
export const partIncluded = {
  item: {
    include: { times: { orderBy: [{ recordedOn: 'desc' as const }, { recordedAt: 'desc' as const }], take: 1 } },
  },
};

interface PartRow {
  readonly position: string;
  readonly item: {
    readonly id: string;
    readonly kind: string;
    readonly maker: string;
    readonly partNumber: string;
    readonly serial: string | null;
    readonly provisionalName: string | null;
    readonly version: number;
    readonly times: readonly TimesRow[];
  };
}

export function partOf({ position, item }: PartRow) {
  const { id, maker, partNumber, serial, provisionalName, version } = item;
  const [times] = item.times;
  return {
    ...{ id, position, maker, partNumber, serial, provisionalName, version },
    kind: item.kind as PartClass,
    times: times ? timesOf(times) : null,
  };
}
