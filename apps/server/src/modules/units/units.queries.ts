import type { Reply } from '@hubwright/contracts/operation';
import type { unitOperations } from '@hubwright/contracts/units/operations';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import type { Prisma, SerializedItem, TimeRecord } from '../../platform/database/generated/client.ts';
import { Reads } from '../../platform/database/reads.ts';

type History = Reply<typeof unitOperations.unitHistory>;
type Times = History['times'][number];

@Injectable()
export class UnitQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  /** A unit with its tree, or a part with the assemblies it sat in. Work orders of a part are those of its assemblies then. */
  async history(itemId: string): Promise<History> {
    const item = found(
      await this.reads.models.serializedItem.findUnique({ where: { id: itemId }, include: itsHistory }),
      'This unit or part',
    );
    return {
      ...named(item),
      model: item.model && {
        id: item.model.id,
        designation: item.model.designation,
        bladeCount: item.model.bladeCount,
      },
      identityResolved: [item, ...item.parts.filter((part) => part.toDate === null).map((part) => part.item)].every(
        ({ serial }) => serial !== null,
      ),
      joinedInto: item.joinedInto && { id: item.joinedInto.id, serial: item.joinedInto.serial ?? '' },
      times: item.times.map(timesRow),
      parts: item.parts.map((part) => ({
        ...named(part.item),
        position: part.position,
        fromDate: fromDbDate(part.fromDate),
        toDate: fromDbDateOrNull(part.toDate),
        latestTimes: part.item.times[0] ? timesRow(part.item.times[0]) : null,
      })),
      installedIn: item.installedIn.map(({ parent, position, fromDate, toDate }) => ({
        id: parent.id,
        partNumber: parent.partNumber,
        serial: parent.serial,
        position,
        fromDate: fromDbDate(fromDate),
        toDate: fromDbDateOrNull(toDate),
      })),
      workOrders: await this.workOrders([itemId, ...item.installedIn.map(({ parentId }) => parentId)]),
    };
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
    include: { item: { include: { times: { ...newest, take: 1 } } } },
  },
  installedIn: { orderBy: { fromDate: 'desc' }, take: 100, include: { parent: true } },
} satisfies Prisma.SerializedItemInclude;

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
