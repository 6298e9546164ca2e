import { unitOperations } from '@hubwright/contracts/units/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { IdentityQueries } from './identity.queries.ts';
import { joinIdentity } from './join-identity.command.ts';

/** Identities of parts in work: here and not with the units, because visits and travelers go on under another part. */
@Controller()
export class IdentityController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(IdentityQueries) private readonly identities: IdentityQueries,
  ) {}

  @Operation(unitOperations.knownIdentity)
  knownIdentity(@Query() call: ReadCall<typeof unitOperations.knownIdentity>) {
    return this.identities.known(call.input);
  }

  @Operation(unitOperations.joinIdentity)
  joinIdentity(@Call() call: CommandCall) {
    return this.runner.run(joinIdentity, call);
  }
}
