import { type allocationOperations, openAnswers } from '@hubwright/contracts/kits/allocation-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { KitCover } from './kit-cover.ts';

@Injectable()
export class AllocationQueries {
  constructor(@Inject(KitCover) private readonly cover: KitCover) {}

  async policy(): Promise<Reply<typeof allocationOperations.allocationPolicy>> {
    const { policy, odds } = (await this.cover.kept()).basis;
    return {
      ...policy,
      odds: openAnswers.map((answer) => ({ answer, ...odds[answer] })),
      since: policy.since?.toISOString() ?? null,
    };
  }
}
