import { reopenOperations } from '@hubwright/contracts/work-orders/reopen-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { reopenBuild } from './reopen-build.command.ts';
import { ReopeningQueries } from './reopening.queries.ts';

@Controller()
export class ReopeningController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ReopeningQueries) private readonly queries: ReopeningQueries,
  ) {}

  @Operation(reopenOperations.reopening)
  reopening(@Query() call: ReadCall<typeof reopenOperations.reopening>) {
    return this.queries.reopening(call.input);
  }

  @Operation(reopenOperations.shopCost)
  shopCost(@Query() call: ReadCall<typeof reopenOperations.shopCost>) {
    return this.queries.shopCost(call.input);
  }

  @Operation(reopenOperations.reopenBuild)
  reopenBuild(@Call() call: CommandCall) {
    return this.runner.run(reopenBuild, call);
  }
}
