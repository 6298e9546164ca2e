import { scopeOperations } from '@hubwright/contracts/work-orders/scope-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { changeScope } from './change-scope.command.ts';
import { ScopeQueries } from './scope.queries.ts';

@Controller()
export class ScopeController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ScopeQueries) private readonly queries: ScopeQueries,
  ) {}

  @Operation(scopeOperations.scopeDifferences)
  differences(@Query() call: ReadCall<typeof scopeOperations.scopeDifferences>) {
    return this.queries.differences(call.input);
  }

  @Operation(scopeOperations.changeScope)
  change(@Call() call: CommandCall) {
    return this.runner.run(changeScope, call);
  }
}
