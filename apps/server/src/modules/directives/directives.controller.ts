import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { deferDirective } from './defer-directive.command.ts';
import { DirectiveQueries } from './directives.queries.ts';
import { issueDirective } from './issue-directive.command.ts';
import { recordCompliance } from './record-compliance.command.ts';
import { withdrawDirective } from './withdraw-directive.command.ts';

@Controller()
export class DirectivesController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(DirectiveQueries) private readonly directives: DirectiveQueries,
  ) {}

  @Operation(directiveOperations.listDirectives)
  list(@Query() call: ReadCall<typeof directiveOperations.listDirectives>) {
    return this.directives.list(call.input);
  }

  @Operation(directiveOperations.unitDirectives)
  ofUnit(@Query() call: ReadCall<typeof directiveOperations.unitDirectives>) {
    return this.directives.ofUnit(call.input);
  }

  @Operation(directiveOperations.workOrderDirectives)
  ofWorkOrder(@Query() call: ReadCall<typeof directiveOperations.workOrderDirectives>) {
    return this.directives.ofWorkOrder(call.input);
  }

  @Operation(directiveOperations.issueDirective)
  issue(@Call() call: CommandCall) {
    return this.runner.run(issueDirective, call);
  }

  @Operation(directiveOperations.withdrawDirective)
  withdraw(@Call() call: CommandCall) {
    return this.runner.run(withdrawDirective, call);
  }

  @Operation(directiveOperations.recordCompliance)
  record(@Call() call: CommandCall) {
    return this.runner.run(recordCompliance, call);
  }

  @Operation(directiveOperations.deferDirective)
  defer(@Call() call: CommandCall) {
    return this.runner.run(deferDirective, call);
  }
}
