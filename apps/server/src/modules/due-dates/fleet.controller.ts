import { arrivalOperations } from '@hubwright/contracts/due-dates/arrival-operations';
import { fleetOperations } from '@hubwright/contracts/due-dates/fleet-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { ArrivalQueries } from './arrivals.queries.ts';
import { assumeArrivals } from './assume-arrivals.command.ts';
import { DueListFileQueries } from './due-list-files.queries.ts';

@Controller()
export class FleetController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ArrivalQueries) private readonly arrivals: ArrivalQueries,
    @Inject(DueListFileQueries) private readonly files: DueListFileQueries,
  ) {}

  @Operation(fleetOperations.dueListCsv)
  csv(@Query() call: ReadCall<typeof fleetOperations.dueListCsv>) {
    return this.files.csv(call.input);
  }

  @Operation(fleetOperations.dueListPdf)
  pdf(@Query() call: ReadCall<typeof fleetOperations.dueListPdf>) {
    return this.files.pdf(call.input);
  }

  @Operation(arrivalOperations.expectedArrivals)
  expected(@Query() call: ReadCall<typeof arrivalOperations.expectedArrivals>) {
    return this.arrivals.expected(call.input);
  }

  @Operation(arrivalOperations.assumeArrivals)
  assume(@Call() call: CommandCall) {
    return this.runner.run(assumeArrivals, call);
  }
}
