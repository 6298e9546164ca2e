import { expectedOperations } from '@hubwright/contracts/kits/expected-operations';
import { Controller, Inject } from '@nestjs/common';
import { Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { ExpectedQueries } from './expected.queries.ts';

@Controller()
export class ExpectedController {
  constructor(@Inject(ExpectedQueries) private readonly queries: ExpectedQueries) {}

  @Operation(expectedOperations.expectedDemand)
  expected(@Query() call: ReadCall<typeof expectedOperations.expectedDemand>) {
    return this.queries.expected(call.input);
  }

  @Operation(expectedOperations.expectedUnits)
  units(@Query() call: ReadCall<typeof expectedOperations.expectedUnits>) {
    return this.queries.units(call.input);
  }
}
