import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { correctInterval } from './correct-interval.command.ts';
import { IntervalQueries } from './intervals.queries.ts';
import { reportInstalled } from './report-installed.command.ts';
import { reportRemoved } from './report-removed.command.ts';
import { TimesQueries } from './times.queries.ts';
import { withdrawInterval } from './withdraw-interval.command.ts';

@Controller()
export class IntervalsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(TimesQueries) private readonly times: TimesQueries,
    @Inject(IntervalQueries) private readonly intervals: IntervalQueries,
  ) {}

  @Operation(intervalOperations.itemTimes)
  itemTimes(@Query() call: ReadCall<typeof intervalOperations.itemTimes>) {
    return this.times.asOf(call.input);
  }

  @Operation(intervalOperations.aircraftIntervals)
  list(@Query() call: ReadCall<typeof intervalOperations.aircraftIntervals>) {
    return this.intervals.list(call.input.itemId);
  }

  @Operation(intervalOperations.reportInstalled)
  installed(@Call() call: CommandCall) {
    return this.runner.run(reportInstalled, call);
  }

  @Operation(intervalOperations.reportRemoved)
  removed(@Call() call: CommandCall) {
    return this.runner.run(reportRemoved, call);
  }

  @Operation(intervalOperations.correctInterval)
  correct(@Call() call: CommandCall) {
    return this.runner.run(correctInterval, call);
  }

  @Operation(intervalOperations.withdrawInterval)
  withdraw(@Call() call: CommandCall) {
    return this.runner.run(withdrawInterval, call);
  }
}
