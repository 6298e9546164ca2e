import { lossOperations } from '@hubwright/contracts/vendors/loss-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { LossQueries } from './losses.queries.ts';
import { writeOffPart } from './write-off-part.command.ts';
import { writeOffPieces } from './write-off-pieces.command.ts';

@Controller()
export class LossesController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(LossQueries) private readonly losses: LossQueries,
  ) {}

  @Operation(lossOperations.writeOffPieces)
  writeOffPieces(@Call() call: CommandCall) {
    return this.runner.run(writeOffPieces, call);
  }

  @Operation(lossOperations.writeOffPart)
  writeOffPart(@Call() call: CommandCall) {
    return this.runner.run(writeOffPart, call);
  }

  @Operation(lossOperations.listVendorLosses)
  listVendorLosses(@Query() call: ReadCall<typeof lossOperations.listVendorLosses>) {
    return this.losses.list(call.input);
  }
}
