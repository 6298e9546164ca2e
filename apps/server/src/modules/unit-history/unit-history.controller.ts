import { unitHistoryOperations as op } from '@hubwright/contracts/units/unit-history-operations';
import { Controller, Inject } from '@nestjs/common';
import { Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { UnitHistoryQueries } from './unit-history.queries.ts';

@Controller()
export class UnitHistoryController {
  constructor(@Inject(UnitHistoryQueries) private readonly queries: UnitHistoryQueries) {}

  @Operation(op.unitPapers)
  papers(@Query() call: ReadCall<typeof op.unitPapers>) {
    return this.queries.papers(call.input);
  }

  @Operation(op.wholeUnitHistory)
  whole(@Query() call: ReadCall<typeof op.wholeUnitHistory>) {
    return this.queries.whole(call.input);
  }

  @Operation(op.unitHistoryPdf)
  pdf(@Query() call: ReadCall<typeof op.unitHistoryPdf>) {
    return this.queries.pdf(call.input);
  }
}
