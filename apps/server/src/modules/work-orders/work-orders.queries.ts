import type { Input, Reply } from '@hubwright/contracts/operation';
import type { Role } from '@hubwright/contracts/roles';
import type { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import type { HoldKind, Stage } from '@hubwright/contracts/work-orders/states';
import { normaliseSerial } from '@hubwright/rules/identity';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type ListRow, rowColumns, rowTables, workOrderRowOf } from './list-row.ts';
import { partIncluded, partOf, timesOf } from './unit-shapes.ts';

// Numbers have a fixed width until there are 9,999 of them; ids are made in the order of time and never run out.
const listSql = `
  SELECT ${rowColumns} FROM ${rowTables}
  WHERE ($1::text IS NULL OR w.stage = $1) AND (NOT $2::boolean OR w.closed_at IS NULL)
    AND ($3::text IS NULL OR w.consent = $3) AND ($4::uuid IS NULL OR w.customer_id = $4)
    AND ($5::boolean IS NULL OR $5 = EXISTS (SELECT FROM holds h WHERE h.work_order_id = w.id AND h.lifted_at IS NULL))
    AND ($6::text IS NULL OR w.number ILIKE $6 OR u.serial ILIKE $6 OR c.name ILIKE $6 OR m.designation ILIKE $6
      OR EXISTS (SELECT FROM installations i JOIN serialized_items p ON p.id = i.item_id
        WHERE i.parent_id = w.unit_id AND i.to_date IS NULL AND p.serial ILIKE $6))
    AND ($7::uuid IS NULL OR w.id < $7)
  ORDER BY w.id DESC LIMIT $8`;

@Injectable()
export class WorkOrdersQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async list(
    input: Input<typeof workOrderOperations.listWorkOrders>,
  ): Promise<Reply<typeof workOrderOperations.listWorkOrders>> {
    const { stage, consent, customerId, held, search, after, limit } = input;
    const rows = await this.reads.sql<ListRow>(listSql, [
      stage && stage !== 'open' ? stage : null,
      stage === 'open',
      consent ?? null,
      customerId ?? null,
      held ?? null,
      search ? `%${likeText(search)}%` : null,
      after && isId(after) ? after : null,
      limit + 1,
    ]);
    const now = this.clock.now();
    const shown = rows.slice(0, limit);
    return {
      rows: shown.map((row) => workOrderRowOf(row, now)),
      next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }

  async holds(
    input: Input<typeof workOrderOperations.listHolds>,
  ): Promise<Reply<typeof workOrderOperations.listHolds>> {
    const { after, limit, liftedByRole } = input;
    const holds = await this.reads.models.hold.findMany({
      where: {
        liftedAt: null,
        ...(liftedByRole ? { liftedByRole } : {}),
        ...(after && isId(after) ? { id: { gt: after } } : {}),
      },
      include: { workOrder: { select: { id: true, number: true, customer: { select: { name: true } } } } },
      orderBy: { id: 'asc' },
      take: limit + 1,
    });
    const shown = holds.slice(0, limit);
    const people = await this.reads.models.person.findMany({
      where: { id: { in: shown.map((hold) => hold.placedBy) } },
      select: { id: true, displayName: true },
    });
    const nameOf = new Map(people.map((person) => [person.id, person.displayName]));
    return {
      rows: shown.map(({ id, kind, reason, workOrder, ...hold }) => ({
        ...{ id, reason, kind: kind as HoldKind, liftedByRole: hold.liftedByRole as Role },
        workOrder: { id: workOrder.id, number: workOrder.number },
        customer: workOrder.customer.name,
        placedBy: nameOf.get(hold.placedBy) ?? '',
        placedAt: hold.placedAt.toISOString(),
      })),
      next: holds.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }

  /** Every item with this serial, newest first: identity is maker + part number + serial, so there may be several. */
  async returning(
    input: Input<typeof workOrderOperations.returningUnit>,
  ): Promise<Reply<typeof workOrderOperations.returningUnit>> {
    const items = await returningItems(this.reads, input);
    return { rows: items.map(returningOf) };
  }
}

function returningItems(reads: Reads, input: Input<typeof workOrderOperations.returningUnit>) {
  return reads.models.serializedItem.findMany({
    where: { serial: normaliseSerial(input.serial), ...(input.modelId ? { modelId: input.modelId } : {}) },
    orderBy: { createdAt: 'desc' },
    take: 10,
    include: {
      times: { orderBy: [{ recordedOn: 'desc' }, { recordedAt: 'desc' }], take: 1 },
      parts: { where: { toDate: null }, orderBy: { position: 'asc' }, include: partIncluded },
      workOrders: { orderBy: { receivedOn: 'desc' }, take: 50, include: { customer: { select: { name: true } } } },
    },
  });
}
type ReturningItem = Awaited<ReturnType<typeof returningItems>>[number];

function returningOf(item: ReturningItem): Reply<typeof workOrderOperations.returningUnit>['rows'][number] {
  const visits = item.workOrders.map(({ id, number, reason, ...visit }) => ({
    ...{ id, number, reason, stage: visit.stage as Stage, customer: visit.customer.name },
    scope: visit.scope as never,
    receivedOn: fromDbDate(visit.receivedOn),
  }));
  const open = item.workOrders.find((visit) => visit.closedAt === null);
  return {
    itemId: item.id,
    kind: item.kind as never,
    maker: item.maker,
    partNumber: item.partNumber,
    serial: item.serial ?? '',
    modelId: item.modelId,
    openWorkOrder: open ? { id: open.id, number: open.number, stage: open.stage as Stage } : null,
    lastTimes: item.times[0] ? timesOf(item.times[0]) : null,
    parts: item.parts.map(partOf),
    visits,
  };
}

/** What is typed is looked for as it is: `%` and `_` stand for themselves. */
function likeText(text: string): string {
  return text.replaceAll(/[\\%_]/g, (sign) => `\\${sign}`);
}

function isId(text: string): boolean {
  return /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(text);
}
