import { dimensionOperations } from '@hubwright/contracts/work-orders/dimension-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { DimensionQueries } from './dimensions.queries.ts';
import { recordCarried } from './record-carried.command.ts';
import { shortenBlades } from './shorten-blades.command.ts';

@Controller()
export class DimensionsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(DimensionQueries) private readonly queries: DimensionQueries,
  ) {}

  @Operation(dimensionOperations.workOrderDimensions)
  of(@Query() call: ReadCall<typeof dimensionOperations.workOrderDimensions>) {
    return this.queries.of(call.input);
  }

  @Operation(dimensionOperations.recordCarried)
  recordCarried(@Call() call: CommandCall) {
    return this.runner.run(recordCarried, call);
  }

  @Operation(dimensionOperations.shorteningDifferences)
  shortening(@Query() call: ReadCall<typeof dimensionOperations.shorteningDifferences>) {
    return this.queries.shortening(call.input);
  }

  @Operation(dimensionOperations.shortenBlades)
  shorten(@Call() call: CommandCall) {
    return this.runner.run(shortenBlades, call);
  }
}
