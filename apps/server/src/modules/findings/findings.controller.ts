import { findingOperations } from '@hubwright/contracts/findings/operations';
import { setOperations } from '@hubwright/contracts/findings/set-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { decideSet } from './decide-set.command.ts';
import { disposeFinding } from './dispose-finding.command.ts';
import { failStep } from './fail-step.command.ts';
import { FindingQueries } from './findings.queries.ts';
import { fitReplacement } from './fit-replacement.command.ts';
import { raiseFinding } from './raise-finding.command.ts';
import { supersedeDisposition } from './supersede-disposition.command.ts';

@Controller()
export class FindingsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(FindingQueries) private readonly queries: FindingQueries,
  ) {}

  @Operation(findingOperations.listFindings)
  list(@Query() call: ReadCall<typeof findingOperations.listFindings>) {
    return this.queries.list(call.input);
  }

  @Operation(findingOperations.finding)
  one(@Query() call: ReadCall<typeof findingOperations.finding>) {
    return this.queries.one(call.input);
  }

  @Operation(findingOperations.raiseFinding)
  raise(@Call() call: CommandCall) {
    return this.runner.run(raiseFinding, call);
  }

  @Operation(findingOperations.failStep)
  fail(@Call() call: CommandCall) {
    return this.runner.run(failStep, call);
  }

  @Operation(findingOperations.disposeFinding)
  dispose(@Call() call: CommandCall) {
    return this.runner.run(disposeFinding, call);
  }

  @Operation(findingOperations.supersedeDisposition)
  supersede(@Call() call: CommandCall) {
    return this.runner.run(supersedeDisposition, call);
  }

  @Operation(findingOperations.fitReplacement)
  fitReplacement(@Call() call: CommandCall) {
    return this.runner.run(fitReplacement, call);
  }

  @Operation(setOperations.decideSet)
  decideSet(@Call() call: CommandCall) {
    return this.runner.run(decideSet, call);
  }
}
