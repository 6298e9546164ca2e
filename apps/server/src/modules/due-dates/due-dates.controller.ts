import { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { ComingDueQueries } from './coming-due.queries.ts';
import { DueDateQueries } from './due-dates.queries.ts';
import { recomputeDueDates } from './recompute-due-dates.command.ts';

@Controller()
export class DueDatesController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(DueDateQueries) private readonly queries: DueDateQueries,
    @Inject(ComingDueQueries) private readonly coming: ComingDueQueries,
  ) {}

  @Operation(dueDateOperations.nextDue)
  nextDue(@Query() call: ReadCall<typeof dueDateOperations.nextDue>) {
    return this.queries.nextDue(call.input);
  }

  @Operation(dueDateOperations.comingDue)
  comingDue(@Query() call: ReadCall<typeof dueDateOperations.comingDue>) {
    return this.coming.list(call.input);
  }

  @Operation(dueDateOperations.recomputeDueDates)
  recompute(@Call() call: CommandCall) {
    return this.runner.run(recomputeDueDates, call);
  }
}
