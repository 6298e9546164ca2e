import type { Input } from '@hubwright/contracts/operation';
import type { scopeOperations } from '@hubwright/contracts/work-orders/scope-operations';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { Reads } from '../../platform/database/reads.ts';
import { planScope, workOrderToPlan } from './plan-scope.ts';

@Injectable()
export class ScopeQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  /** Nothing is written on this way, so the read-only models serve as well as a transaction. */
  async differences({ workOrderId, scope, events }: Input<typeof scopeOperations.scopeDifferences>) {
    const models = this.reads.models as unknown as Tx;
    const workOrder = found(await workOrderToPlan(models, workOrderId), 'This work order');
    const plan = await planScope(models, workOrder, { scope, events });
    const { from, to, differences, reopensBuild, prompts, needsHiddenDamage } = plan;
    return {
      ...{ from: { ...from, events: [...from.events] }, to: { ...to, events: [...to.events] } },
      ...{ differences, reopensBuild, prompts, needsHiddenDamage },
    };
  }
}
