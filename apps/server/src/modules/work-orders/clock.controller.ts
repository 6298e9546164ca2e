import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { ClockQueries } from './clock.queries.ts';
import { enterTime } from './enter-time.command.ts';
import { mendTime } from './mend-time.command.ts';
import { startClock } from './start-clock.command.ts';
import { stopClock } from './stop-clock.command.ts';

@Controller()
export class ClockController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ClockQueries) private readonly clocks: ClockQueries,
  ) {}

  @Operation(clockOperations.myClock)
  mine(@Query() call: ReadCall<typeof clockOperations.myClock>) {
    return this.clocks.mine(call.actor.personId);
  }

  @Operation(clockOperations.startClock)
  start(@Call() call: CommandCall) {
    return this.runner.run(startClock, call);
  }

  @Operation(clockOperations.stopClock)
  stop(@Call() call: CommandCall) {
    return this.runner.run(stopClock, call);
  }

  @Operation(clockOperations.enterTime)
  enter(@Call() call: CommandCall) {
    return this.runner.run(enterTime, call);
  }

  @Operation(clockOperations.mendTime)
  mend(@Call() call: CommandCall) {
    return this.runner.run(mendTime, call);
  }

  @Operation(clockOperations.listTimes)
  list(@Query() call: ReadCall<typeof clockOperations.listTimes>) {
    return this.clocks.list(call.input);
  }

  @Operation(clockOperations.realTimes)
  real(@Query() call: ReadCall<typeof clockOperations.realTimes>) {
    return this.clocks.real(call.input);
  }
}
