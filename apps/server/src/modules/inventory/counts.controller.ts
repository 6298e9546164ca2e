import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { beginBinCount } from './begin-bin-count.command.ts';
import { countLot } from './count-lot.command.ts';
import { CountsQueries } from './counts.queries.ts';
import { decideCount } from './decide-count.command.ts';
import { endBinCount } from './end-bin-count.command.ts';

@Controller()
export class CountsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(CountsQueries) private readonly queries: CountsQueries,
  ) {}

  @Operation(countOperations.countsDue)
  due(@Query() call: ReadCall<typeof countOperations.countsDue>) {
    return this.queries.due(call.input);
  }

  @Operation(countOperations.listCounts)
  list(@Query() call: ReadCall<typeof countOperations.listCounts>) {
    return this.queries.list(call.input, call.actor);
  }

  @Operation(countOperations.beginBinCount)
  begin(@Call() call: CommandCall) {
    return this.runner.run(beginBinCount, call);
  }

  @Operation(countOperations.endBinCount)
  end(@Call() call: CommandCall) {
    return this.runner.run(endBinCount, call);
  }

  @Operation(countOperations.countLot)
  countLot(@Call() call: CommandCall) {
    return this.runner.run(countLot, call);
  }

  @Operation(countOperations.decideCount)
  decide(@Call() call: CommandCall) {
    return this.runner.run(decideCount, call);
  }
}
