import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { LoadQueries } from './loads.queries.ts';
import { signLoad } from './sign-load.command.ts';
import { startLoad } from './start-load.command.ts';
import { takeOutOfLoad } from './take-out-of-load.command.ts';

@Controller()
export class LoadsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(LoadQueries) private readonly loads: LoadQueries,
  ) {}

  @Operation(loadOperations.startLoad)
  startLoad(@Call() call: CommandCall) {
    return this.runner.run(startLoad, call);
  }

  @Operation(loadOperations.takeOutOfLoad)
  takeOutOfLoad(@Call() call: CommandCall) {
    return this.runner.run(takeOutOfLoad, call);
  }

  @Operation(loadOperations.signLoad)
  signLoad(@Call() call: CommandCall) {
    return this.runner.run(signLoad, call);
  }

  @Operation(loadOperations.listLoads)
  listLoads(@Query() call: ReadCall<typeof loadOperations.listLoads>) {
    return this.loads.list(call.input);
  }
}
