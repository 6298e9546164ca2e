import type { Input, Reply } from '@hubwright/contracts/operation';
import type { unitOperations } from '@hubwright/contracts/units/operations';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';
import { planForView } from './join-plan.ts';

@Injectable()
export class IdentityQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async known({
    itemId,
    serial,
  }: Input<typeof unitOperations.knownIdentity>): Promise<Reply<typeof unitOperations.knownIdentity>> {
    const plan = await planForView(this.reads.models, itemId, serial);
    return { joining: plan?.joining ?? null, refused: plan?.refused ?? null };
  }
}
