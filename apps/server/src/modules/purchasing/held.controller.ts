import { heldOperations } from '@hubwright/contracts/purchasing/held-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { HeldQueries } from './held.queries.ts';
import { holdDelivery } from './hold-delivery.command.ts';
import { returnHeld } from './return-held.command.ts';

@Controller()
export class HeldController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(HeldQueries) private readonly queries: HeldQueries,
  ) {}

  @Operation(heldOperations.listHeld)
  listHeld(@Query() call: ReadCall<typeof heldOperations.listHeld>) {
    return this.queries.list(call.input);
  }

  @Operation(heldOperations.holdDelivery)
  holdDelivery(@Call() call: CommandCall) {
    return this.runner.run(holdDelivery, call);
  }

  @Operation(heldOperations.returnHeld)
  returnHeld(@Call() call: CommandCall) {
    return this.runner.run(returnHeld, call);
  }
}
