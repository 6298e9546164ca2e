import type { Input } from '@hubwright/contracts/operation';
import type { reopenOperations } from '@hubwright/contracts/work-orders/reopen-operations';
import { addMoney, multiplyPrice } from '@hubwright/rules/money';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { askThrough, sealsInUnit } from '../kits/public.ts';
import { repeatableSteps } from './repeat-steps.ts';

@Injectable()
export class ReopeningQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  /** What is offered follows from the seals the failed joint touches, where the revision says so. */
  async reopening({ stepId }: Input<typeof reopenOperations.reopening>) {
    const step = found(
      await this.reads.models.travelerStep.findUnique({
        where: { id: stepId },
        include: { traveler: { select: { workOrderId: true } } },
      }),
      'This step',
    );
    const touched = (step.sheet as { seals?: readonly string[] } | null)?.seals ?? [];
    const [{ steps, follow }, seals, currency] = await Promise.all([
      repeatableSteps(this.reads.models, step),
      sealsInUnit(askThrough(this.reads), step.traveler.workOrderId),
      this.currency(),
    ]);
    return {
      follow: follow.map(({ title }) => title),
      steps: steps.map(({ id, title, signedAt, sequence }) => ({
        ...{ stepId: id, title, signedAt: signedAt?.toISOString() ?? '' },
        offered: touched.length > 0 && sequence < step.sequence,
      })),
      seals: seals.map(({ kitId: _, listed, ...seal }) => ({
        ...seal,
        cost: multiplyPrice(seal.unitPrice, seal.quantity, currency),
        offered: touched.includes(listed),
      })),
    };
  }

  async shopCost({ workOrderId }: Input<typeof reopenOperations.shopCost>) {
    const currency = await this.currency();
    const rows = await this.reads.sql<ShopCostRow>(shopCostSql, [workOrderId]);
    const priced = rows.map((row) => ({
      ...row,
      at: row.at.toISOString(),
      cost: multiplyPrice(row.unitPrice, row.quantity, currency),
    }));
    return { rows: priced, total: addMoney({ currency, minor: 0 }, ...priced.map(({ cost }) => cost)) };
  }

  private async currency(): Promise<string> {
    const shop = await this.reads.models.shopProfile.findUnique({ where: { id: 1 }, select: { currency: true } });
    return found(shop, 'The shop profile').currency;
  }
}

interface ShopCostRow {
  readonly id: string;
  readonly part: { readonly number: string; readonly description: string };
  readonly position: string;
  readonly quantity: number;
  readonly unitPrice: string;
  readonly cause: string;
  readonly reason: string;
  readonly at: Date;
}

const shopCostSql = `
  SELECT s.id, json_build_object('number', p.number, 'description', p.description) AS part, s.position, s.quantity,
    s.unit_price AS "unitPrice", s.cause, s.reason, s.at
  FROM shop_cost_parts s JOIN parts p ON p.id = s.part_id WHERE s.work_order_id = $1::uuid ORDER BY s.at, s.position, s.id LIMIT 500`;
