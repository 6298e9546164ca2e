import { quantityText } from '@hubwright/contracts/inventory/quantity';
import type { promiseOperations } from '@hubwright/contracts/kits/promise-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { affectedParts } from '@hubwright/rules/shortage';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { coverQuestion } from './cover-question.ts';
import type { CoverState } from './cover-state.ts';
import { KitCover } from './kit-cover.ts';
import { type LineCover, lineCovers } from './line-cover.ts';
import { type MovePlan, planForView } from './move-plan.ts';
import { effects, summaryOf } from './what-if.ts';

type Served = Reply<typeof promiseOperations.lotServes>['rows'][number];

interface PromiseRow {
  readonly lineId: string;
  readonly quantity: number;
  readonly isFrozen: boolean;
}
const promisesSql = `
  SELECT kit_line_id AS "lineId", quantity, frozen_at IS NOT NULL AS "isFrozen" FROM reservations WHERE lot_id = $1::uuid`;
const freeSql = `
  SELECT greatest(0, coalesce((SELECT sum(on_hand) FROM balances WHERE lot_id = l.id AND place_kind IN ('bin', 'quarantine') AND on_hand > 0), 0)
    - coalesce((SELECT sum(quantity) FROM reservations WHERE lot_id = l.id), 0))::int AS left FROM lots l WHERE l.id = $1::uuid`;
const orderLinesSql = `
  SELECT id, greatest(0, quantity - received)::int AS left FROM purchase_order_lines WHERE order_id = $1::uuid ORDER BY sequence`;

/** Who is served by what, and what would be if a lot went elsewhere. */
@Injectable()
export class PromisesQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(KitCover) private readonly cover: KitCover,
  ) {}

  async lotServes({
    lotId,
  }: Input<typeof promiseOperations.lotServes>): Promise<Reply<typeof promiseOperations.lotServes>> {
    const [lot] = await this.reads.sql<{ left: number }>(freeSql, [lotId]);
    const { left } = found(lot, 'This lot');
    const promises = await this.reads.sql<PromiseRow>(promisesSql, [lotId]);
    const state = await this.cover.kept();
    const byLine = new Map(state.all().map((cover) => [cover.row.lineId, cover]));
    const promised = promises.flatMap(({ lineId, quantity, isFrozen }) => {
      const cover = byLine.get(lineId);
      const how = isFrozen ? ('frozen' as const) : ('promised' as const);
      return cover ? [servedRow(cover, { quantity, how, late: false })] : [];
    });
    const counted = countedOn(state, lotId);
    const used = counted.reduce((sum, { quantity }) => sum + quantity, 0);
    return { rows: [...promised, ...counted], free: Math.max(0, left - used) };
  }

  async orderServes({
    orderId,
  }: Input<typeof promiseOperations.orderServes>): Promise<Reply<typeof promiseOperations.orderServes>> {
    const lines = await this.reads.sql<{ id: string; left: number }>(orderLinesSql, [orderId]);
    found(lines[0], 'This order');
    const state = await this.cover.kept();
    return {
      lines: lines.map(({ id, left }) => {
        const rows = countedOn(state, id);
        const used = rows.reduce((sum, { quantity }) => sum + quantity, 0);
        return { orderLineId: id, rows, free: Math.max(0, left - used) };
      }),
    };
  }

  /** Pure: the plan is only read, and the question is put to the same rule with the plan in it. */
  async whatIf(input: Input<typeof promiseOperations.whatIf>): Promise<Reply<typeof promiseOperations.whatIf>> {
    const state = await this.cover.kept();
    const plan = await planForView(this.reads.models, input, state.basis.today);
    const { before, after } = await this.suppose(state, plan);
    const changes = effects(before, after);
    const { kit, lot, line, quantity, takenFrom } = plan;
    const pieces = quantityText(quantity, line.part.issueUnit);
    return {
      ...{ lotCode: lot.code, kitCode: kit.code, lineId: line.id, quantity },
      takenFrom: takenFrom.map(({ kitId, kitCode, quantity: given }) => ({ kitId, kitCode, quantity: given })),
      ...changes,
      summary: summaryOf({ pieces, lot: lot.code, kit: kit.code }, changes),
    };
  }

  private async suppose(state: CoverState, plan: MovePlan): Promise<{ before: LineCover[]; after: LineCover[] }> {
    const byLine = new Map(state.all().map((cover) => [cover.row.lineId, cover.row.part.id]));
    const givers = plan.takenFrom.flatMap(({ lineId }) => byLine.get(lineId) ?? []);
    const parts = affectedParts([plan.lot.partId, plan.line.partId, ...givers], state.linked);
    const before = [...parts].flatMap((part) => state.ofPart(part));
    const change = new Map(plan.takenFrom.map(({ lineId, quantity }) => [lineId, -quantity]));
    change.set(plan.line.id, plan.quantity);
    const lines = before.map(({ row }) => ({ ...row, reserved: row.reserved + (change.get(row.lineId) ?? 0) }));
    const known = state.supply(parts);
    const stock = known.stock.map((lot) => (lot.id === plan.lot.id ? { ...lot, free: lot.free - plan.fromFree } : lot));
    const supply = { ...known, stock };
    const answer = await this.cover.suppose(coverQuestion(lines, supply, { basis: state.basis }));
    return { before, after: lineCovers(lines, answer, { supply, basis: state.basis }) };
  }
}

/** Lines that count on a lot or an order line by the serving order, those needed first on top. */
function countedOn(state: CoverState, sourceId: string): Served[] {
  return state.all().flatMap((cover) => {
    const pegs = cover.pegs.filter(({ id }) => id === sourceId);
    if (pegs.length === 0) return [];
    const quantity = pegs.reduce((sum, peg) => sum + peg.quantity, 0);
    const isLate = pegs.some(({ date }) => date > cover.row.needBy && date > state.basis.today);
    return [servedRow(cover, { quantity, how: 'counted-on', late: isLate })];
  });
}

function servedRow({ row, likely }: LineCover, of: Pick<Served, 'quantity' | 'how' | 'late'>): Served {
  const { kitId, kitCode, workOrderId, workOrder, lineId, part, position, needBy } = row;
  return { kitId, kitCode, workOrderId, workOrder, lineId, part, position, needBy, likely, ...of };
}
