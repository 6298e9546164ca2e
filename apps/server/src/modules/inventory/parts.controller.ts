import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { addBin } from './add-bin.command.ts';
import { addPart } from './add-part.command.ts';
import { changeBin } from './change-bin.command.ts';
import { PartsQueries } from './parts.queries.ts';
import { PlacesQueries } from './places.queries.ts';
import { setAlternates } from './set-alternates.command.ts';

@Controller()
export class PartsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(PartsQueries) private readonly queries: PartsQueries,
    @Inject(PlacesQueries) private readonly places: PlacesQueries,
  ) {}

  @Operation(partOperations.listParts)
  listParts(@Query() call: ReadCall<typeof partOperations.listParts>) {
    return this.queries.listParts(call.input);
  }

  @Operation(partOperations.addPart)
  addPart(@Call() call: CommandCall) {
    return this.runner.run(addPart, call);
  }

  @Operation(partOperations.setAlternates)
  setAlternates(@Call() call: CommandCall) {
    return this.runner.run(setAlternates, call);
  }

  @Operation(partOperations.listBins)
  listBins(@Query() call: ReadCall<typeof partOperations.listBins>) {
    return this.queries.listBins(call.input);
  }

  @Operation(partOperations.addBin)
  addBin(@Call() call: CommandCall) {
    return this.runner.run(addBin, call);
  }

  @Operation(partOperations.changeBin)
  changeBin(@Call() call: CommandCall) {
    return this.runner.run(changeBin, call);
  }

  @Operation(partOperations.listPlaces)
  listPlaces(@Query() call: ReadCall<typeof partOperations.listPlaces>) {
    return this.places.list(call.input);
  }

  @Operation(partOperations.listLotsAt)
  listLotsAt(@Query() call: ReadCall<typeof partOperations.listLotsAt>) {
    return this.places.lotsAt(call.input);
  }
}
