import { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { issueChecklist } from './issue-checklist.command.ts';
import { ReceivingQueries } from './receiving.queries.ts';

@Controller()
export class ReceivingController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ReceivingQueries) private readonly queries: ReceivingQueries,
  ) {}

  @Operation(receivingOperations.listChecklists)
  listChecklists(@Query() call: ReadCall<typeof receivingOperations.listChecklists>) {
    return this.queries.checklists(call.input);
  }

  @Operation(receivingOperations.issueChecklist)
  issueChecklist(@Call() call: CommandCall) {
    return this.runner.run(issueChecklist, call);
  }

  @Operation(receivingOperations.lotLabelsPdf)
  lotLabelsPdf(@Query() call: ReadCall<typeof receivingOperations.lotLabelsPdf>) {
    return this.queries.labels(call.input);
  }
}
