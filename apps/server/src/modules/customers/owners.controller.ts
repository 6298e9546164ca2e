import { ownerOperations } from '@hubwright/contracts/customers/owner-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { moveAircraft } from './move-aircraft.command.ts';
import { OwnerQueries } from './owners.queries.ts';

@Controller()
export class OwnersController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(OwnerQueries) private readonly owners: OwnerQueries,
  ) {}

  @Operation(ownerOperations.moveAircraft)
  move(@Call() call: CommandCall) {
    return this.runner.run(moveAircraft, call);
  }

  @Operation(ownerOperations.aircraftMoves)
  moves(@Query() call: ReadCall<typeof ownerOperations.aircraftMoves>) {
    return this.owners.moves(call.input.customerId);
  }
}
