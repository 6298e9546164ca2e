import { unitOperations } from '@hubwright/contracts/units/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { Reads } from '../../platform/database/reads.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { joinIdentity } from './join-identity.command.ts';
import { planJoin } from './join-plan.ts';

/** Identities of parts in work: here and not with the units, because visits and travelers go on under another part. */
@Controller()
export class IdentityController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(Reads) private readonly reads: Reads,
  ) {}

  @Operation(unitOperations.knownIdentity)
  async knownIdentity(@Query() { input }: ReadCall<typeof unitOperations.knownIdentity>) {
    // Nothing is written on this way, so the read-only models serve as well.
    const tx = this.reads.models as unknown as Tx;
    const item = found(await tx.serializedItem.findUnique({ where: { id: input.itemId } }), 'This part');
    const plan = await planJoin(tx, item, input.serial);
    return { joining: plan?.joining ?? null, refused: plan?.refused ?? null };
  }

  @Operation(unitOperations.joinIdentity)
  joinIdentity(@Call() call: CommandCall) {
    return this.runner.run(joinIdentity, call);
  }
}
