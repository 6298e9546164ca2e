import type { Reply } from '@hubwright/contracts/operation';
import type { unitOperations } from '@hubwright/contracts/units/operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import type { Prisma, SerializedItem, TimeRecord } from '../../platform/database/generated/client.ts';
import { Reads } from '../../platform/database/reads.ts';
import { partsWithin } from './parts-within.ts';
import { restsOn, TimesOnRecord } from './times-on-record.ts';

type History = Reply<typeof unitOperations.unitHistory>;
type Times = History['times'][number];

@Injectable()
export class UnitQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  /** A unit with its tree, or a part with the assemblies it sat in. Work orders of a part are those of its assemblies then. */
  async history(itemId: string): Promise<History> {
    const item = found(
      await this.reads.models.serializedItem.findUnique({ where: { id: itemId }, include: itsHistory }),
      'This unit or part',
    );
    const parts = await this.parts(item.id, item.parts);
    return {
      ...named(item),
      model: item.model && {
        id: item.model.id,
        designation: item.model.designation,
        bladeCount: item.model.bladeCount,
      },
      identityResolved: [item, ...parts.filter(({ toDate }) => toDate === null)].every(({ serial }) => serial !== null),
      joinedInto: item.joinedInto && { id: item.joinedInto.id, serial: item.joinedInto.serial ?? '' },
      times: item.times.map(timesRow),
      parts,
      installedIn: item.installedIn.map(({ parent, position, fromDate, toDate }) => ({
        ...{ id: parent.id, isUnit: parent.kind === 'assembly' },
        partNumber: parent.partNumber,
        serial: parent.serial,
        position,
        fromDate: fromDbDate(fromDate),
        toDate: fromDbDateOrNull(toDate),
      })),
      workOrders: await this.workOrders([itemId, ...item.installedIn.map(({ parentId }) => parentId)]),
    };
  }

  /** What sits in it now with the parts of parts, and what sat in it once; each with its times as computed. */
  private async parts(itemId: string, rows: readonly Once[]): Promise<History['parts']> {
    const { models } = this.reads;
    const within = await partsWithin(models, [itemId]);
    const once = rows.filter(({ toDate }) => toDate !== null);
    const times = await TimesOnRecord.of(
      models,
      [...within, ...once].map(({ item }) => item.id),
    );
    const today = await this.zone.today(this.clock.now());
    return [
      ...within.map(({ item, parentId, level, position, fromDate }) => ({
        ...{ ...named(item), parentId, level, position, fromDate: fromDbDate(fromDate), toDate: null },
        times: partTimes(times, item.id, today),
      })),
      ...once.map(({ item, position, fromDate, toDate }) => ({
        ...{ ...named(item), parentId: itemId, level: 1, position, fromDate: fromDbDate(fromDate) },
        toDate: fromDbDateOrNull(toDate),
        times: partTimes(times, item.id, fromDbDateOrNull(toDate) ?? today),
      })),
    ];
  }

  private async workOrders(unitIds: string[]): Promise<History['workOrders']> {
    const rows = await this.reads.models.workOrder.findMany({
      where: { unitId: { in: unitIds } },
      orderBy: { receivedOn: 'desc' },
      take: 100,
      include: { customer: { select: { name: true } }, _count: { select: { findings: true } } },
    });
    return rows.map((row) => ({
      id: row.id,
      number: row.number,
      scope: row.scope as History['workOrders'][number]['scope'],
      stage: row.stage,
      reason: row.reason,
      customer: row.customer.name,
      receivedOn: fromDbDate(row.receivedOn),
      closedAt: row.closedAt?.toISOString() ?? null,
      findings: row._count.findings,
    }));
  }
}

const newest = {
  orderBy: [{ recordedOn: 'desc' }, { recordedAt: 'desc' }],
} satisfies Prisma.SerializedItem$timesArgs;
const itsHistory = {
  model: true,
  joinedInto: { select: { id: true, serial: true } },
  times: { ...newest, take: 200 },
  parts: {
    orderBy: [{ toDate: { sort: 'desc', nulls: 'first' } }, { position: 'asc' }],
    take: 200,
    include: { item: true },
  },
  installedIn: { orderBy: { fromDate: 'desc' }, take: 100, include: { parent: true } },
} satisfies Prisma.SerializedItemInclude;

type Once = Prisma.InstallationGetPayload<{ include: { item: true } }>;

function partTimes(times: TimesOnRecord, itemId: string, asOf: string): History['parts'][number]['times'] {
  const { sinceNew, sinceOverhaul, contradiction } = times.on(itemId, asOf);
  const cycles = times.on(itemId, asOf, 'cycles').sinceNew;
  return {
    ...{ asOf, countedThrough: sinceNew.countedThrough, restsOn: contradiction ?? restsOn(sinceNew) },
    sinceNew: { tenths: sinceNew.tenths, atLeast: sinceNew.atLeastTenths },
    sinceOverhaul: { tenths: sinceOverhaul.tenths, atLeast: sinceOverhaul.atLeastTenths },
    cyclesSinceNew: { cycles: cycles.tenths, atLeast: cycles.atLeastTenths },
  };
}

function named(item: SerializedItem) {
  const { id, maker, partNumber, serial, provisionalName, version } = item;
  return { id, kind: item.kind as History['kind'], maker, partNumber, serial, provisionalName, version };
}

function timesRow(row: TimeRecord): Times {
  return {
    recordedOn: fromDbDate(row.recordedOn),
    sinceNewTenths: row.sinceNewTenths ?? 'unknown',
    sinceOverhaulTenths: row.sinceOverhaulTenths ?? 'unknown',
    sinceNewCycles: row.sinceNewCycles ?? 'unknown',
    meter: row.meter as Times['meter'],
    meterTenths: row.meterTenths,
    basis: row.basis,
    workOrderId: row.workOrderId,
  };
}
