import type { Input } from '@hubwright/contracts/operation';
import type { scopeOperations } from '@hubwright/contracts/work-orders/scope-operations';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';
import { planScopeForReading } from './plan-scope.ts';

@Injectable()
export class ScopeQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async differences({ workOrderId, scope, events }: Input<typeof scopeOperations.scopeDifferences>) {
    const plan = await planScopeForReading(this.reads.models, workOrderId, { scope, events });
    const { from, to, differences, reopensBuild, prompts, needsHiddenDamage } = plan;
    return {
      ...{ from: { ...from, events: [...from.events] }, to: { ...to, events: [...to.events] } },
      ...{ differences, reopensBuild, prompts, needsHiddenDamage },
    };
  }
}
