import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { cancelAbsence, enterAbsence } from './absences.command.ts';
import { assignShifts, takeBackShifts } from './assign-shifts.command.ts';
import { addShiftPattern, retireShiftPattern } from './shift-patterns.command.ts';
import { addHoliday, removeHoliday } from './shop-holidays.command.ts';
import { WorkingTimeQueries } from './working-time.queries.ts';

/** Shifts, holidays, absences. */
@Controller()
export class WorkingTimeController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(WorkingTimeQueries) private readonly queries: WorkingTimeQueries,
  ) {}

  @Operation(workingTimeOperations.workingWeek)
  week() {
    return this.queries.week();
  }

  @Operation(workingTimeOperations.absencesOf)
  absencesOf(@Query() call: ReadCall<typeof workingTimeOperations.absencesOf>) {
    return this.queries.absencesOf(call.input);
  }

  @Operation(workingTimeOperations.presence)
  presence(@Query() call: ReadCall<typeof workingTimeOperations.presence>) {
    return this.queries.presence(call.input);
  }

  @Operation(workingTimeOperations.addShiftPattern)
  addPattern(@Call() call: CommandCall) {
    return this.runner.run(addShiftPattern, call);
  }

  @Operation(workingTimeOperations.retireShiftPattern)
  retirePattern(@Call() call: CommandCall) {
    return this.runner.run(retireShiftPattern, call);
  }

  @Operation(workingTimeOperations.assignShifts)
  assign(@Call() call: CommandCall) {
    return this.runner.run(assignShifts, call);
  }

  @Operation(workingTimeOperations.takeBackShifts)
  takeBack(@Call() call: CommandCall) {
    return this.runner.run(takeBackShifts, call);
  }

  @Operation(workingTimeOperations.addHoliday)
  addHoliday(@Call() call: CommandCall) {
    return this.runner.run(addHoliday, call);
  }

  @Operation(workingTimeOperations.removeHoliday)
  removeHoliday(@Call() call: CommandCall) {
    return this.runner.run(removeHoliday, call);
  }

  @Operation(workingTimeOperations.enterAbsence)
  enterAbsence(@Call() call: CommandCall) {
    return this.runner.run(enterAbsence, call);
  }

  @Operation(workingTimeOperations.cancelAbsence)
  cancelAbsence(@Call() call: CommandCall) {
    return this.runner.run(cancelAbsence, call);
  }
}
