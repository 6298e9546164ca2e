import { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { inspectInStorage } from './inspect-in-storage.command.ts';
import { KeepingQueries } from './keeping.queries.ts';
import { putInStorage } from './put-in-storage.command.ts';
import { sayUse } from './say-use.command.ts';
import { takeOutOfStorage } from './take-out-of-storage.command.ts';
import { withdrawStorage } from './withdraw-storage.command.ts';

@Controller()
export class KeepingController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(KeepingQueries) private readonly keeping: KeepingQueries,
  ) {}

  @Operation(keepingOperations.unitKeeping)
  of(@Query() call: ReadCall<typeof keepingOperations.unitKeeping>) {
    return this.keeping.of(call.input);
  }

  @Operation(keepingOperations.sayUse)
  use(@Call() call: CommandCall) {
    return this.runner.run(sayUse, call);
  }

  @Operation(keepingOperations.putInStorage)
  put(@Call() call: CommandCall) {
    return this.runner.run(putInStorage, call);
  }

  @Operation(keepingOperations.takeOutOfStorage)
  takeOut(@Call() call: CommandCall) {
    return this.runner.run(takeOutOfStorage, call);
  }

  @Operation(keepingOperations.inspectInStorage)
  inspect(@Call() call: CommandCall) {
    return this.runner.run(inspectInStorage, call);
  }

  @Operation(keepingOperations.withdrawStorage)
  withdraw(@Call() call: CommandCall) {
    return this.runner.run(withdrawStorage, call);
  }
}
