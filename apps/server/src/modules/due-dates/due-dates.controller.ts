import { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import { Controller, Inject } from '@nestjs/common';
import { Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { DueDateQueries } from './due-dates.queries.ts';

@Controller()
export class DueDatesController {
  constructor(@Inject(DueDateQueries) private readonly queries: DueDateQueries) {}

  @Operation(dueDateOperations.nextDue)
  nextDue(@Query() call: ReadCall<typeof dueDateOperations.nextDue>) {
    return this.queries.nextDue(call.input);
  }

  @Operation(dueDateOperations.comingDue)
  comingDue(@Query() call: ReadCall<typeof dueDateOperations.comingDue>) {
    return this.queries.comingDue(call.input);
  }
}
