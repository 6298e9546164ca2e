import { bakeOperations } from '@hubwright/contracts/work-orders/bake-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation } from '../../platform/http/operation.ts';
import { BakeQueries } from './bakes.queries.ts';
import { beginBake } from './begin-bake.command.ts';
import { withdrawBake } from './withdraw-bake.command.ts';

@Controller()
export class BakesController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(BakeQueries) private readonly bakes: BakeQueries,
  ) {}

  @Operation(bakeOperations.beginBake)
  begin(@Call() call: CommandCall) {
    return this.runner.run(beginBake, call);
  }

  @Operation(bakeOperations.withdrawBake)
  withdraw(@Call() call: CommandCall) {
    return this.runner.run(withdrawBake, call);
  }

  @Operation(bakeOperations.listBakes)
  list() {
    return this.bakes.list();
  }
}
