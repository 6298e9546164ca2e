import type { valueOperations } from '@hubwright/contracts/inventory/value-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { RuleError } from '@hubwright/rules/errors';
import { averageOf, averageSteps } from '@hubwright/rules/valuation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type FlowRow, flowOf, flowsOfPartSql } from './stock-flows.ts';

type Answer = Reply<typeof valueOperations.partAverage>;

interface Row extends FlowRow {
  readonly id: string;
  readonly lot_id: string;
  readonly lot_code: string;
}

/** How the average of a part came about: the ledger followed once more, step by step. */
@Injectable()
export class AverageQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async partAverage({ partId, after, limit }: Input<typeof valueOperations.partAverage>): Promise<Answer> {
    const part = await this.reads.models.part.findUnique({ where: { id: partId }, select: { number: true } });
    const { number } = found(part, 'This part');
    const shop = await this.reads.models.shopProfile.findUnique({ where: { id: 1 } });
    const steps = stepsOf(await this.reads.sql<Row>(flowsOfPartSql, [partId]));
    const newest = (steps ?? []).toReversed();
    const from = Number(after ?? 0) || 0;
    const to = from + limit;
    return {
      ...{ part: number, currency: shop?.currency ?? 'USD', isFollowed: steps !== undefined },
      rows: newest.slice(from, to),
      next: to < newest.length ? String(to) : null,
    };
  }
}

/** Undefined where the ledger cannot be followed, because a lot changed its owner on the way. */
function stepsOf(rows: readonly Row[]): Answer['rows'] | undefined {
  try {
    const flows = rows.map(flowOf);
    return averageSteps(flows).map(({ worth, held }, index) => {
      const { id, at, lot_id, lot_code } = rows[index] as Row;
      const { kind, quantity, unitPrice } = flows[index] as (typeof flows)[number];
      const isPaid = kind === 'receipt' || kind === 'undone-receipt';
      return {
        ...{ id, at: at.toISOString(), lotId: lot_id, lotCode: lot_code, kind, quantity, worth },
        paid: isPaid ? unitPrice : null,
        held: held.quantity,
        value: held.value,
        average: averageOf(held) ?? null,
      };
    });
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return undefined;
  }
}
