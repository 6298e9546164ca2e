import type { allocationOperations } from '@hubwright/contracts/kits/allocation-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';
import { currentPolicy } from './allocation-policy.ts';
import { askThrough } from './ask.ts';

@Injectable()
export class AllocationQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async policy(): Promise<Reply<typeof allocationOperations.allocationPolicy>> {
    const policy = await currentPolicy(askThrough(this.reads));
    return { ...policy, since: policy.since?.toISOString() ?? null };
  }
}
