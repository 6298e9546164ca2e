import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { addApplication } from './add-application.command.ts';
import { addManual } from './add-manual.command.ts';
import { addModel } from './add-model.command.ts';
import { checkCurrency } from './check-currency.command.ts';
import { issueRevision } from './issue-revision.command.ts';
import { ManualQueries } from './manuals.queries.ts';
import { ModelQueries } from './models.queries.ts';
import { setFlatRate } from './set-flat-rate.command.ts';

@Controller()
export class ManualsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ManualQueries) private readonly manuals: ManualQueries,
    @Inject(ModelQueries) private readonly models: ModelQueries,
  ) {}

  @Operation(manualOperations.listModels)
  listModels(@Query() call: ReadCall<typeof manualOperations.listModels>) {
    return this.models.list(call.input);
  }

  @Operation(manualOperations.showModel)
  showModel(@Query() call: ReadCall<typeof manualOperations.showModel>) {
    return this.models.show(call.input.modelId);
  }

  @Operation(manualOperations.addModel)
  addModel(@Call() call: CommandCall) {
    return this.runner.run(addModel, call);
  }

  @Operation(manualOperations.addApplication)
  addApplication(@Call() call: CommandCall) {
    return this.runner.run(addApplication, call);
  }

  @Operation(manualOperations.setFlatRate)
  setFlatRate(@Call() call: CommandCall) {
    return this.runner.run(setFlatRate, call);
  }

  @Operation(manualOperations.listManuals)
  listManuals(@Query() call: ReadCall<typeof manualOperations.listManuals>) {
    return this.manuals.list(call.input);
  }

  @Operation(manualOperations.addManual)
  addManual(@Call() call: CommandCall) {
    return this.runner.run(addManual, call);
  }

  @Operation(manualOperations.showRevision)
  showRevision(@Query() call: ReadCall<typeof manualOperations.showRevision>) {
    return this.manuals.showRevision(call.input.revisionId);
  }

  @Operation(manualOperations.issueRevision)
  issueRevision(@Call() call: CommandCall) {
    return this.runner.run(issueRevision, call);
  }

  @Operation(manualOperations.checkCurrency)
  checkCurrency(@Call() call: CommandCall) {
    return this.runner.run(checkCurrency, call);
  }
}
