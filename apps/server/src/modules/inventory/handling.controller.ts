import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { decideSuspicion } from './decide-suspicion.command.ts';
import { mergeLots } from './merge-lots.command.ts';
import { returnToSupplier } from './return-to-supplier.command.ts';
import { scrapLot } from './scrap-lot.command.ts';
import { splitLot } from './split-lot.command.ts';
import { surrenderLot } from './surrender-lot.command.ts';
import { suspectLot } from './suspect-lot.command.ts';
import { WitnessQueries } from './witness.queries.ts';

@Controller()
export class HandlingController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(WitnessQueries) private readonly queries: WitnessQueries,
  ) {}

  @Operation(handlingOperations.witnesses)
  witnesses(@Query() call: ReadCall<typeof handlingOperations.witnesses>) {
    return this.queries.list(call.actor);
  }

  @Operation(handlingOperations.splitLot)
  splitLot(@Call() call: CommandCall) {
    return this.runner.run(splitLot, call);
  }

  @Operation(handlingOperations.mergeLots)
  mergeLots(@Call() call: CommandCall) {
    return this.runner.run(mergeLots, call);
  }

  @Operation(handlingOperations.scrapLot)
  scrapLot(@Call() call: CommandCall) {
    return this.runner.run(scrapLot, call);
  }

  @Operation(handlingOperations.surrenderLot)
  surrenderLot(@Call() call: CommandCall) {
    return this.runner.run(surrenderLot, call);
  }

  @Operation(handlingOperations.returnToSupplier)
  returnToSupplier(@Call() call: CommandCall) {
    return this.runner.run(returnToSupplier, call);
  }

  @Operation(handlingOperations.suspectLot)
  suspectLot(@Call() call: CommandCall) {
    return this.runner.run(suspectLot, call);
  }

  @Operation(handlingOperations.decideSuspicion)
  decideSuspicion(@Call() call: CommandCall) {
    return this.runner.run(decideSuspicion, call);
  }
}
