import { unitOperations } from '@hubwright/contracts/units/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { confirmIdentity } from './confirm-identity.command.ts';
import { establishTimes } from './establish-times.command.ts';
import { FindQueries } from './find.queries.ts';
import { UnitQueries } from './units.queries.ts';

@Controller()
export class UnitsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(UnitQueries) private readonly units: UnitQueries,
    @Inject(FindQueries) private readonly search: FindQueries,
  ) {}

  @Operation(unitOperations.find)
  find(@Query() call: ReadCall<typeof unitOperations.find>) {
    return this.search.find(call.input);
  }

  @Operation(unitOperations.unitHistory)
  history(@Query() call: ReadCall<typeof unitOperations.unitHistory>) {
    return this.units.history(call.input.itemId);
  }

  @Operation(unitOperations.confirmIdentity)
  confirmIdentity(@Call() call: CommandCall) {
    return this.runner.run(confirmIdentity, call);
  }

  @Operation(unitOperations.establishTimes)
  establishTimes(@Call() call: CommandCall) {
    return this.runner.run(establishTimes, call);
  }
}
