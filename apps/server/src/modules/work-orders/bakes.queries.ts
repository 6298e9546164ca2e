import type { Reply } from '@hubwright/contracts/operation';
import type { bakeOperations } from '@hubwright/contracts/work-orders/bake-operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { Reads } from '../../platform/database/reads.ts';
import { bakeClockOf, bakeSql, type StoredBake } from './bake-clock.ts';
import { blockOf } from './step-block.ts';
import { type TurnRow, turnSql } from './turn.ts';

type Row = Reply<typeof bakeOperations.listBakes>['rows'][number];

interface Found {
  readonly row: Omit<Row, 'bake' | 'load' | 'blocked'>;
  readonly load: Row['load'];
  readonly sheet: unknown;
  readonly bake: StoredBake | null;
}

/** Far more than ovens hold. */
const most = 500;

// Every open bake of a part that is plated, whether or not its turn has come: a clock runs all the same.
const bakesSql = `
  SELECT * FROM (SELECT json_build_object('stepId', s.id, 'title', s.title, 'travelerId', t.id, 'travelerNumber', t.number,
      'workOrderId', w.id, 'workOrderNumber', w.number, 'partClass', t.part_class, 'position', t.position,
      'serial', coalesce(i.serial, i.provisional_name, ''), 'customer', c.name) AS row,
    (SELECT json_build_object('id', l.id, 'number', l.number) FROM load_parts lp JOIN loads l ON l.id = lp.load_id
      WHERE lp.step_id = s.id AND lp.open) AS load, s.sheet, ${bakeSql} AS bake
  FROM traveler_steps s JOIN travelers t ON t.id = s.traveler_id JOIN serialized_items i ON i.id = t.item_id
  JOIN work_orders w ON w.id = t.work_order_id JOIN customers c ON c.id = w.customer_id
  WHERE s.state = 'open' AND s.sheet->>'kind' = 'bake' AND w.closed_at IS NULL
    AND t.disposition IS DISTINCT FROM 'reject') known WHERE bake IS NOT NULL LIMIT ${most}`;

@Injectable()
export class BakeQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async list(): Promise<Reply<typeof bakeOperations.listBakes>> {
    const found = await this.reads.sql<Found>(bakesSql);
    const blocks = await this.blocks(found);
    const rows = found.flatMap(({ row, load, ...stored }): Row[] => {
      const bake = bakeClockOf(stored);
      return bake ? [{ ...row, load, bake, blocked: bake.begun ? null : (blocks.get(row.stepId) ?? null) }] : [];
    });
    return { rows: rows.sort((a, b) => dueOf(a) - dueOf(b) || a.travelerNumber.localeCompare(b.travelerNumber)) };
  }

  /** Why a bake cannot begin now, by step. */
  private async blocks(found: readonly Found[]): Promise<Map<string, Row['blocked']>> {
    const travelers = [...new Set(found.map(({ row }) => row.travelerId))];
    if (travelers.length === 0) return new Map();
    const turns = await this.reads.sql<TurnRow>(turnSql, [travelers, null, 5000]);
    const now = this.clock.now();
    return new Map(
      found.map(({ row: { stepId } }) => {
        const turn = turns.find(({ step_id }) => step_id === stepId);
        const early = { problem: 'step-out-of-order', detail: 'An earlier step of its traveler is still open' };
        return [stepId, turn ? (blockOf(turn, now) ?? null) : early];
      }),
    );
  }
}

/** Those to begin first, by their last beginning; then those in the oven, by when they may come out. */
function dueOf({ bake: { platedAt, startWithinMinutes, minimumMinutes, begun } }: Row): number {
  const inOven = 1e15;
  if (begun) return inOven + Date.parse(begun.at) + minimumMinutes * 60_000;
  return Date.parse(platedAt) + startWithinMinutes * 60_000;
}
