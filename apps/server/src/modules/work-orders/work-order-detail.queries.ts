import type { DeclaredEvent } from '@hubwright/contracts/manuals/words';
import type { Reply } from '@hubwright/contracts/operation';
import type { QuoteKind } from '@hubwright/contracts/quotes/operations';
import type { Role } from '@hubwright/contracts/roles';
import type { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import {
  actions,
  type Consent,
  expectedPapers,
  type HoldKind,
  isPossible,
  type Paper,
  type Stage,
} from '@hubwright/contracts/work-orders/states';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { TimesOnRecord } from '../units/public.ts';
import { bladeSetOf } from './blade-set.ts';
import { type ListRow, rowColumns, rowTables, workOrderRowOf } from './list-row.ts';
import { openItemsOf } from './open-items.ts';
import { partOf, timesAt, timesOf } from './unit-shapes.ts';
import { readWhole, type WholeWorkOrder } from './whole-work-order.ts';

type Detail = Reply<typeof workOrderOperations.workOrder>;

@Injectable()
export class WorkOrderDetailQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  /** What its blades are not settled in as a set: an inspector's. */
  private async openOfSet(workOrder: WholeWorkOrder): Promise<Detail['openItems']> {
    if (workOrder.closedAt || workOrder.shippedAt || workOrder.travelers.length === 0) return [];
    const { open } = await bladeSetOf(this.reads.models, { ...workOrder, unitId: workOrder.unit.id });
    return open.map((what) => ({ what, holder: 'inspector' as const }));
  }

  /** Everything about one work order: a fixed number of statements, however much there is. */
  async detail(workOrderId: string): Promise<Detail> {
    const [rows, whole] = await Promise.all([
      this.reads.sql<ListRow>(`SELECT ${rowColumns} FROM ${rowTables} WHERE w.id = $1::uuid`, [workOrderId]),
      readWhole(this.reads, workOrderId),
    ]);
    const workOrder = found(whole, 'This work order');
    const row = workOrderRowOf(found(rows[0], 'This work order'), this.clock.now());
    const looked = await this.reads.models.signOff.findFirst({
      where: { workOrderId, subjectKind: 'work-order', subjectId: workOrderId },
    });
    const nameOf = await this.names([
      ...workOrder.holds.flatMap((hold) => [hold.placedBy, hold.liftedBy]),
      looked?.personId,
    ]);
    return {
      ...row,
      ...about(workOrder),
      ...(await this.unitNow(workOrder.unit)),
      preliminaryInspection: looked && {
        person: nameOf(looked.personId),
        signedAt: looked.signedAt.toISOString(),
        result: looked.result,
        contentHash: looked.contentHash,
      },
      quotes: workOrder.quotes.map(quoteOf),
      allHolds: workOrder.holds.map((hold) => holdOf(hold, nameOf)),
      looseItems: workOrder.looseItems.map((item) => ({ ...item, returnedAt: item.returnedAt?.toISOString() ?? null })),
      travelers: workOrder.travelers.map(travelerOf),
      findings: workOrder.findings,
      openItems: [...openItemsOf(workOrder, row), ...(await this.openOfSet(workOrder))],
      possible: actions.filter((action) =>
        isPossible({ stage: workOrder.stage as Stage, consent: workOrder.consent as Consent }, action),
      ),
    };
  }

  /** The unit's own times are what came with it; those of its parts are computed, since a part may have flown elsewhere since its paper. */
  private async unitNow({ version, times, parts }: WholeWorkOrder['unit']) {
    const flown = await TimesOnRecord.of(
      this.reads.models,
      parts.map(({ item }) => item.id),
    );
    const today = await this.zone.today(this.clock.now());
    return {
      unitVersion: version,
      times: times[0] ? timesOf(times[0]) : null,
      parts: parts.map((part) => ({ ...partOf(part), times: timesAt(flown, { itemId: part.item.id, today }) })),
    };
  }

  private async names(ids: readonly (string | null | undefined)[]): Promise<(id: string | null) => string> {
    const wanted = [...new Set(ids.filter((id): id is string => typeof id === 'string'))];
    const people = await this.reads.models.person.findMany({
      where: { id: { in: wanted } },
      select: { id: true, displayName: true },
    });
    const known = new Map(people.map((person) => [person.id, person.displayName]));
    return (id) => (id === null ? '' : (known.get(id) ?? ''));
  }
}

function about(workOrder: WholeWorkOrder) {
  const { model, revision, aircraft, application, reason, paperworkNote, evaluationCapMinor } = workOrder;
  const paperwork = workOrder.paperwork as Paper[];
  return {
    ...{ reason, paperworkNote, evaluationCapMinor, aircraft, application, model, paperwork },
    revision: { id: revision.id, revision: revision.revision, state: revision.state, manual: revision.manual.number },
    events: workOrder.events as DeclaredEvent[],
    paperworkMissing: expectedPapers.filter((paper) => !paperwork.includes(paper)),
    releasedAt: workOrder.releasedAt?.toISOString() ?? null,
    okToShipAt: workOrder.okToShipAt?.toISOString() ?? null,
    shippedAt: workOrder.shippedAt?.toISOString() ?? null,
    closedAt: workOrder.closedAt?.toISOString() ?? null,
  };
}

function quoteOf(quote: WholeWorkOrder['quotes'][number]) {
  return {
    ...quote,
    kind: quote.kind as QuoteKind,
    validUntil: fromDbDate(quote.validUntil),
    sentAt: quote.sentAt?.toISOString() ?? null,
    decidedAt: quote.decidedAt?.toISOString() ?? null,
  };
}

function holdOf(hold: WholeWorkOrder['holds'][number], nameOf: (id: string | null) => string) {
  return {
    ...{ id: hold.id, reason: hold.reason, liftReason: hold.liftReason },
    kind: hold.kind as HoldKind,
    liftedByRole: hold.liftedByRole as Role,
    placedAt: hold.placedAt.toISOString(),
    placedBy: nameOf(hold.placedBy),
    liftedBy: hold.liftedBy === null ? null : nameOf(hold.liftedBy),
    liftedAt: hold.liftedAt?.toISOString() ?? null,
  };
}

function travelerOf({ steps, ...traveler }: WholeWorkOrder['travelers'][number]) {
  const open = steps.filter((step) => step.state === 'open');
  return {
    ...traveler,
    steps: steps.length,
    signed: steps.length - open.length,
    nextStep: open[0]?.title ?? null,
  };
}
