import { valueOperations } from '@hubwright/contracts/inventory/value-operations';
import { Controller, Inject } from '@nestjs/common';
import { Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { AverageQueries } from './average.queries.ts';
import { UsageQueries } from './usage.queries.ts';
import { ValueQueries } from './value.queries.ts';

@Controller()
export class ValueController {
  constructor(
    @Inject(ValueQueries) private readonly value: ValueQueries,
    @Inject(AverageQueries) private readonly average: AverageQueries,
    @Inject(UsageQueries) private readonly usage: UsageQueries,
  ) {}

  @Operation(valueOperations.stockValue)
  stockValue(@Query() call: ReadCall<typeof valueOperations.stockValue>) {
    return this.value.stockValue(call.input);
  }

  @Operation(valueOperations.partAverage)
  partAverage(@Query() call: ReadCall<typeof valueOperations.partAverage>) {
    return this.average.partAverage(call.input);
  }

  @Operation(valueOperations.partUsage)
  partUsage(@Query() call: ReadCall<typeof valueOperations.partUsage>) {
    return this.usage.partUsage(call.input);
  }
}
